package firstamp.account;

import firstamp.analysis.figures.FigureText;
import firstamp.model.JobSheet;
import java.util.ArrayList;
import java.util.List;

/** What changed between two power-ups, in lines. */
public final class ComparisonText {
  private static final double RIPPLE_GROWN = 1.3;
  private static final double CURRENT_GROWN = 1.1;

  private ComparisonText() {}

  /** Only what changed, for the end of a run. */
  public static List<String> changes(Comparison comparison, JobSheet sheet) {
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
              + (unchanged == 1 ? " figure" : " figures")
              + " no significant change");
    }
    lines.add(parting(comparison, sheet));
    if (comparison.leakageA() != null) {
      lines.add("  " + leakage(comparison));
    }
    String points = pointsTo(comparison);
    if (points != null) {
      lines.add("  " + points);
    }
    return lines;
  }

  /** How the difference in room temperature affects the current, in words. */
  public static String leakage(Comparison comparison) {
    double amps = comparison.leakageA();
    return "the second room alone makes the leakage of its germanium parts "
        + FigureText.amps(Math.abs(amps))
        + (amps < 0 ? " less" : " more")
        + "; the uncertainty of the current holds that";
  }

  /**
   * More ripple points to a worn filter capacitor; whether the current rose with it tells a leaky
   * one from a dried-out one (common practice, no source). Null where the ripple has not grown.
   */
  public static String pointsTo(Comparison comparison) {
    Comparison.Difference ripple = null;
    Comparison.Difference amps = null;
    for (Comparison.Difference difference : comparison.differences()) {
      boolean grown = difference.significant() && difference.difference() > 0;
      if (difference.figure().equals("rippleVrms")
          && grown
          && difference.after() > RIPPLE_GROWN * difference.before()) {
        ripple = difference;
      } else if (difference.figure().equals("steadyA")) {
        amps = grown ? difference : null;
      }
    }
    if (ripple == null) {
      return null;
    }
    return amps != null && amps.after() > CURRENT_GROWN * amps.before()
        ? "ripple and supply current went up together: that points to a leaky capacitor"
        : "the ripple went up and the supply current did not: that points to a dried-out capacitor";
  }

  /** One figure. */
  public static String line(Comparison.Difference difference, JobSheet sheet) {
    String unit = difference.unit();
    return FigureList.name(difference.figure(), difference.rail(), sheet)
        + ": "
        + FigureList.value(difference.before(), difference.valueUnit())
        + ", then "
        + FigureList.value(difference.after(), difference.valueUnit())
        + " ("
        + FigureList.value(Math.abs(difference.difference()), unit)
        + (difference.difference() < 0 ? " less" : " more")
        + ", \u00b1 "
        + FigureList.value(difference.plusMinus(), unit)
        + ")";
  }

  /** Where the traces diverge. */
  public static String parting(Comparison comparison, JobSheet sheet) {
    Comparison.Parting parting = comparison.parting();
    return parting == null
        ? "  the two curves agree throughout"
        : "  the two curves part at "
            + FigureText.millis(parting.atMs())
            + ": "
            + FigureList.parting(parting, sheet);
  }
}
