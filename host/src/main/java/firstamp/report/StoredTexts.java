package firstamp.report;

import firstamp.log.PowerUpEntry;
import firstamp.session.PowerUpStudy;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;

/** What a stored power-up says about itself besides its figures, as texts for a page. */
final class StoredTexts {
  private static final DateTimeFormatter LOCAL =
      DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm").withZone(ZoneId.systemDefault());

  private StoredTexts() {}

  /** Begin in local time. */
  static String started(PowerUpEntry entry) {
    return LOCAL.format(Instant.ofEpochMilli(entry.startedEpochMs()));
  }

  /** Number, begin and label. */
  static String name(PowerUpEntry entry) {
    String label = entry.label() == null ? "" : ", " + entry.label();
    return "power-up " + entry.number() + " (" + started(entry) + label + ")";
  }

  /** The job sheet with its defaults, and what took the power-up. */
  static List<ReportInput.Table> tables(PowerUpStudy study) {
    List<ReportInput.Table> tables = new ArrayList<>();
    tables.add(
        new ReportInput.Table(
            "Job sheet, with what was filled in",
            List.of("What", "Value"),
            SheetRows.of(study.header().effectiveSheetJson())));
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
}
