package firstamp.window.words;

import firstamp.account.Verdict;
import firstamp.model.Alarm;
import firstamp.model.Summary;

/** How a power-up ended, in the few words of a headline; never more than was seen. */
public final class Outcomes {
  private Outcomes() {}

  /** From its summary alone: without the verdict nothing is said about faults. */
  public static String head(Words words, Numbers numbers, Summary summary) {
    return of(words, numbers, summary.outcome(), summary.ended(), summary.onMs(), "verdict.quiet");
  }

  /** With its verdict: a short comes first, and a quiet run may say that no fault was seen. */
  public static String head(Words words, Numbers numbers, Summary summary, Verdict verdict) {
    Alarm found = Verdict.shortOf(summary.alarms());
    boolean on = summary.onMs() != null && summary.onMs() > 0;
    if (found != null && on && found.value() != null) {
      String ohms = numbers.inUnit(found.value(), found.unit()).toString();
      return words.get("verdict.short", found.atMost() ? words.get("value.atMost", ohms) : ohms);
    }
    String quiet = verdict.fine() ? "verdict.fine" : "verdict.quiet";
    return of(words, numbers, summary.outcome(), summary.ended(), summary.onMs(), quiet);
  }

  /**
   * From what the list of power-ups holds.
   *
   * @param ended as in the summary, null = not known
   */
  public static String of(
      Words words, Numbers numbers, String outcome, String ended, Double onMs, String quiet) {
    if (onMs == null || onMs == 0) {
      return words.get("verdict.neverOn");
    }
    if ("normal".equals(outcome)) {
      return words.get(quiet, onMs < 1000 ? numbers.moment(onMs) : numbers.clock(onMs));
    }
    return "rule-off".equals(ended)
        ? words.get("verdict.ruleOff")
        : words.getOr("verdict." + outcome, words.get("verdict.other"));
  }
}
