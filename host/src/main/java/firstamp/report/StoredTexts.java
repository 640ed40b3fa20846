package firstamp.report;

import firstamp.account.FigureList;
import firstamp.log.PowerUpEntry;
import firstamp.log.SetNotes;
import firstamp.study.PowerUpStudy;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;

/** What a stored power-up holds in addition to its figures, as texts for a page. */
final class StoredTexts {
  private static final DateTimeFormatter LOCAL =
      DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm").withZone(ZoneId.systemDefault());

  private StoredTexts() {}

  /** Begin in local time. */
  static String started(PowerUpEntry entry) {
    return local(entry.startedEpochMs());
  }

  /** A moment in local time. */
  static String local(long epochMs) {
    return LOCAL.format(Instant.ofEpochMilli(epochMs));
  }

  /** Number, begin and label. */
  static String name(PowerUpEntry entry) {
    String label = entry.label() == null ? "" : ", " + entry.label();
    return "power-up " + entry.number() + " (" + started(entry) + label + ")";
  }

  /** What was measured cold and tried, the job sheet with its defaults, what took the power-up. */
  static List<ReportInput.Table> tables(
      PowerUpStudy study, SetNotes notes, List<String> wireStory) {
    List<ReportInput.Table> tables = new ArrayList<>();
    if (!notes.coldChecks().isEmpty()) {
      tables.add(
          new ReportInput.Table(
              "Measured with the supply off",
              List.of("When", "What", "From", "To", "Value", "Note"),
              notes.coldChecks().stream().map(StoredTexts::row).toList()));
    }
    if (!notes.trials().isEmpty()) {
      tables.add(
          new ReportInput.Table(
              "Wires tried",
              List.of("When", "Wire", "Place", "Power-up", "What came of it"),
              notes.trials().stream().map(StoredTexts::row).toList()));
    }
    if (!wireStory.isEmpty()) {
      tables.add(
          new ReportInput.Table(
              "Wires whose place was not known",
              List.of("What was done, what is known now"),
              wireStory.stream().map(List::of).toList()));
    }
    tables.add(
        new ReportInput.Table(
            "Job sheet, with what was filled in",
            List.of("What", "Value"),
            SheetRows.of(study.header().effectiveSheetJson(), study.header().sheetJson())));
    List<List<String>> rows = new ArrayList<>();
    rows.add(List.of("Probe box", study.header().hello().kind()));
    rows.add(
        List.of(
            "Firmware",
            study.header().hello().firmwareMajor() + "." + study.header().hello().firmwareMinor()));
    rows.add(List.of("Unique name of the power-up", study.entry().uuid()));
    if (study.header().roomCelsius() != null) {
      rows.add(List.of("Room", study.header().roomCelsius() + " \u00b0C"));
    }
    if (study.summary().conversions() != null) {
      rows.add(
          List.of(
              "Conversions",
              study.summary().conversions().received()
                  + " received, "
                  + study.summary().conversions().lost()
                  + " lost in "
                  + study.summary().conversions().gaps()
                  + " gaps"));
    }
    tables.add(
        new ReportInput.Table("Where the figures come from", List.of("What", "Value"), rows));
    return tables;
  }

  private static List<String> row(SetNotes.ColdCheck check) {
    String value =
        check.value() == null
            ? "open"
            : FigureList.value(check.value(), check.unit() == null ? "" : check.unit());
    return List.of(
        local(check.epochMs()), check.kind(), check.from(), check.to(), value, or(check.note()));
  }

  private static List<String> row(SetNotes.Trial trial) {
    return List.of(
        local(trial.epochMs()),
        trial.wire(),
        trial.place(),
        trial.powerUp() == null ? "" : trial.powerUp().toString(),
        SheetRows.inWords(trial.fieldsJson()));
  }

  private static String or(String text) {
    return text == null ? "" : text;
  }
}
