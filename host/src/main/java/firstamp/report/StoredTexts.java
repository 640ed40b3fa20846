package firstamp.report;

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
  static String name(PowerUpEntry entry, ReportWords words) {
    String label = entry.label() == null ? "" : ", " + entry.label();
    return words.word("power-up.small")
        + " "
        + entry.number()
        + " ("
        + started(entry)
        + label
        + ")";
  }

  /** What was measured cold and tried, the job sheet with its defaults, what took the power-up. */
  static List<ReportInput.Table> tables(
      PowerUpStudy study, SetNotes notes, List<String> wireStory, ReportWords words) {
    List<ReportInput.Table> tables = new ArrayList<>();
    if (!notes.coldChecks().isEmpty()) {
      tables.add(
          new ReportInput.Table(
              words.word("cold"),
              List.of(
                  words.word("column.when"),
                  words.word("column.what"),
                  words.word("column.from"),
                  words.word("column.to"),
                  words.word("value"),
                  words.word("column.note")),
              notes.coldChecks().stream().map(each -> row(each, words)).toList()));
    }
    if (!notes.trials().isEmpty()) {
      tables.add(
          new ReportInput.Table(
              words.word("wires"),
              List.of(
                  words.word("column.when"),
                  words.word("column.wire"),
                  words.word("column.place"),
                  words.word("power-up"),
                  words.word("column.result")),
              notes.trials().stream().map(StoredTexts::row).toList()));
    }
    if (!wireStory.isEmpty()) {
      tables.add(
          new ReportInput.Table(
              words.word("wires.unknown"),
              List.of(words.word("column.done")),
              wireStory.stream().map(List::of).toList()));
    }
    tables.add(
        new ReportInput.Table(
            words.word("sheet"),
            List.of(words.word("column.what"), words.word("value")),
            SheetRows.of(study.header().effectiveSheetJson(), study.header().sheetJson())));
    List<List<String>> rows = new ArrayList<>();
    rows.add(List.of(words.word("origin.box"), study.header().hello().kind()));
    rows.add(
        List.of(
            words.word("origin.firmware"),
            study.header().hello().firmwareMajor() + "." + study.header().hello().firmwareMinor()));
    rows.add(List.of(words.word("origin.name"), study.entry().uuid()));
    if (study.header().roomCelsius() != null) {
      rows.add(List.of(words.word("origin.room"), study.header().roomCelsius() + " \u00b0C"));
    }
    if (study.summary().conversions() != null) {
      rows.add(
          List.of(
              words.word("origin.conversions"),
              words.word(
                  "origin.received",
                  Long.toString(study.summary().conversions().received()),
                  Long.toString(study.summary().conversions().lost()),
                  Long.toString(study.summary().conversions().gaps()))));
    }
    tables.add(
        new ReportInput.Table(
            words.word("origin"), List.of(words.word("column.what"), words.word("value")), rows));
    return tables;
  }

  private static List<String> row(SetNotes.ColdCheck check, ReportWords words) {
    String value =
        check.value() == null
            ? words.word("open")
            : words.figures().value(check.value(), check.unit() == null ? "" : check.unit());
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
