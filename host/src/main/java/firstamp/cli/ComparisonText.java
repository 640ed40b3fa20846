package firstamp.cli;

import firstamp.analysis.Comparison;
import firstamp.analysis.FigureList;
import firstamp.analysis.FigureText;
import firstamp.model.JobSheet;
import java.util.ArrayList;
import java.util.List;

/** What changed between two power-ups, in lines. */
final class ComparisonText {
  private ComparisonText() {}

  /** Only what changed, for the end of a run. */
  static List<String> changes(Comparison comparison, JobSheet sheet) {
    List<String> lines = new ArrayList<>();
    int unchanged = 0;
    for (Comparison.Difference difference : comparison.differences()) {
      if (difference.significant()) {
        lines.add("  changed: " + line(difference, sheet));
      } else {
        unchanged++;
      }
    }
    if (comparison.differences().isEmpty()) {
      lines.add("  no figure was measured in both");
    } else if (unchanged > 0) {
      lines.add(
          (lines.isEmpty() ? "  in all " : "  in ")
              + unchanged
              + (lines.isEmpty() ? "" : " other")
              + " figures no change that could be told");
    }
    lines.add(parting(comparison, sheet));
    return lines;
  }

  /** One figure. */
  static String line(Comparison.Difference difference, JobSheet sheet) {
    String unit = difference.unit();
    return FigureList.name(difference.figure(), difference.rail(), sheet)
        + ": "
        + FigureList.value(difference.before(), unit)
        + ", then "
        + FigureList.value(difference.after(), unit)
        + " ("
        + FigureList.value(Math.abs(difference.difference()), unit)
        + (difference.difference() < 0 ? " less" : " more")
        + ", give or take "
        + FigureList.value(difference.plusMinus(), unit)
        + ")";
  }

  /** Where the courses part. */
  static String parting(Comparison comparison, JobSheet sheet) {
    Comparison.Parting parting = comparison.parting();
    return parting == null
        ? "  the two courses do not part"
        : "  the two courses part at "
            + FigureText.millis(parting.atMs())
            + ": "
            + FigureList.parting(parting, sheet);
  }
}
