package firstamp.account;

import firstamp.model.JobSheet;
import firstamp.model.text.Phrases;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** What changed between two power-ups, in one language. Safe to share. */
public final class ComparisonWords {
  /** In English. */
  public static final ComparisonWords ENGLISH = new ComparisonWords(Locale.ROOT);

  private static final double RIPPLE_GROWN = 1.3;
  private static final double CURRENT_GROWN = 1.1;

  private final Phrases phrases;
  private final FigureWords figures;

  /** In this language. */
  public ComparisonWords(Locale locale) {
    this.phrases = new Phrases("firstamp.account.comparison", locale);
    this.figures = new FigureWords(locale);
  }

  /** Only what changed, for the end of a run. */
  public List<String> changes(Comparison comparison, JobSheet sheet) {
    List<String> lines = new ArrayList<>();
    int unchanged = 0;
    for (Comparison.Difference difference : comparison.differences()) {
      if (difference.significant()) {
        lines.add(phrases.say("changed", line(difference, sheet)));
      } else {
        unchanged++;
      }
    }
    if (comparison.differences().isEmpty()) {
      lines.add(phrases.say("none"));
    } else if (unchanged > 0) {
      String which = lines.isEmpty() ? "unchanged.all" : "unchanged.other";
      lines.add(phrases.say(unchanged == 1 ? which + ".one" : which, unchanged));
    }
    lines.add(parting(comparison, sheet));
    if (comparison.leakageA() != null) {
      lines.add(leakage(comparison));
    }
    String points = pointsTo(comparison);
    if (points != null) {
      lines.add(points);
    }
    return lines;
  }

  /** How the difference in room temperature affects the current, in words. */
  public String leakage(Comparison comparison) {
    double amps = comparison.leakageA();
    return phrases.say(
        amps < 0 ? "leakage.less" : "leakage.more", figures.value(Math.abs(amps), "A"));
  }

  /**
   * More ripple points to a worn filter capacitor; whether the current rose with it tells a leaky
   * one from a dried-out one (common practice, no source). Null where the ripple has not grown.
   */
  public String pointsTo(Comparison comparison) {
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
    boolean leaky = amps != null && amps.after() > CURRENT_GROWN * amps.before();
    return phrases.say(leaky ? "points.leaky" : "points.dried-out");
  }

  /** One figure. */
  public String line(Comparison.Difference difference, JobSheet sheet) {
    String unit = difference.unit();
    return phrases.say(
        difference.difference() < 0 ? "line.less" : "line.more",
        figures.name(difference.figure(), difference.rail(), sheet),
        figures.value(difference.before(), difference.valueUnit()),
        figures.value(difference.after(), difference.valueUnit()),
        figures.value(Math.abs(difference.difference()), unit),
        figures.value(difference.plusMinus(), unit));
  }

  /** Where the traces diverge. */
  public String parting(Comparison comparison, JobSheet sheet) {
    Comparison.Parting parting = comparison.parting();
    return parting == null
        ? phrases.say("agree")
        : phrases.say("part", figures.value(parting.atMs(), "ms"), figures.parting(parting, sheet));
  }
}
