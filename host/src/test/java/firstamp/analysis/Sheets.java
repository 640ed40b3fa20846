package firstamp.analysis;

import firstamp.model.JobSheet;
import java.util.List;
import java.util.Map;

/** Job sheets of invented sets. */
public final class Sheets {
  private Sheets() {}

  public static JobSheet.Rail rail(int input, double nominalV) {
    return new JobSheet.Rail(input, "B" + input, nominalV, 5.0, 300.0, 20.0, 0.05, 2200.0, "none");
  }

  public static JobSheet.Levels levels(Double toneHz) {
    return new JobSheet.Levels(toneHz, 10.0, 38.0, 6.0, -30.0, 500.0);
  }

  public static JobSheet sheet(JobSheet.Levels levels, JobSheet.Rail... rails) {
    return new JobSheet(
        1,
        new JobSheet.SetInfo("Larch D2 dictation unit (invented)", "recorder", "negative"),
        new JobSheet.Supply("bench", "supply-lead", 12.0, 11.0, 13.0, 1.5, 1.0, true),
        new JobSheet.Limits(4.5, 60.0, 1.0, 0.3, null),
        List.of(rails),
        levels,
        Map.of());
  }
}
