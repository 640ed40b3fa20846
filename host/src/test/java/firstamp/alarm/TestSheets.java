package firstamp.alarm;

import firstamp.model.JobSheet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Filled sheets for rule tests. */
final class TestSheets {
  private TestSheets() {}

  /** 12 V, 1.5 A supply, rail 1 of 8.2 V ± 5 % within 300 ms, head 38 dB below the meter. */
  static JobSheet unit() {
    return with(Map.of());
  }

  static JobSheet with(String rule, Map<String, Double> numbers) {
    return with(Map.of(rule, settings(numbers)));
  }

  static JobSheet.RuleSettings settings(Map<String, Double> numbers) {
    return new JobSheet.RuleSettings(null, null, null, null, null, null, null, numbers);
  }

  static JobSheet with(Map<String, JobSheet.RuleSettings> rules) {
    return new JobSheet(
        1,
        new JobSheet.SetInfo("Larch D2 dictation unit (invented)", "recorder", "negative"),
        supply("bench", "supply-lead"),
        new JobSheet.Limits(4.5, 60.0, 1.0, 0.3, null),
        List.of(rail()),
        new JobSheet.Levels(400.0, 10.0, 38.0, 6.0, -30.0, 1500.0),
        new HashMap<>(rules));
  }

  static JobSheet.Supply supply(String kind, String sits) {
    return new JobSheet.Supply(kind, sits, 12.0, 11.0, 13.0, 1.5, 1.0, true);
  }

  static JobSheet.Rail rail() {
    return new JobSheet.Rail(1, "B1", 8.2, 5.0, 300.0, 9.8, 0.05, 2200.0, "full");
  }

  static JobSheet replacing(JobSheet.Supply supply, JobSheet.Levels levels) {
    JobSheet unit = unit();
    return new JobSheet(1, unit.set(), supply, unit.limits(), unit.rails(), levels, unit.rules());
  }
}
