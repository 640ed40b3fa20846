package firstamp.study;

import firstamp.locate.wire.TriedWire;
import firstamp.locate.wire.WireCase;
import firstamp.locate.wire.WireStep;
import firstamp.log.BenchLog;
import firstamp.log.LogException;
import firstamp.sheet.SheetException;

/** Takes a logged power-up as the trial of a wire, or says why it is none. */
public final class TrialJudge {
  private TrialJudge() {}

  /**
   * A trial with its verdict.
   *
   * @param step to be kept
   * @param sentence for the person
   */
  public record Judged(WireStep.Trial step, String sentence) {}

  /** A power-up that says nothing about a wire; the message says why. */
  public static final class Refused extends Exception {
    private static final long serialVersionUID = 1;

    private final boolean nothingToCompare;

    Refused(String why, boolean nothingToCompare) {
      super(why);
      this.nothingToCompare = nothingToCompare;
    }

    /** Whether only an earlier power-up is missing. */
    public boolean nothingToCompare() {
      return nothingToCompare;
    }
  }

  /**
   * Judges.
   *
   * @param log in which the power-up is
   * @param trial the power-up
   * @param wires of its set
   * @param tried the wire and the place it was joined to
   * @throws Refused it is of another set, tried something else, never ran, or stands alone
   */
  public static Judged judge(BenchLog log, PowerUpStudy trial, WireCase wires, TriedWire tried)
      throws Refused, LogException, SheetException {
    String name = "power-up " + trial.entry().number();
    String set = trial.entry().setName();
    if (!set.equals(wires.set().name())) {
      throw new Refused(
          name + " is of " + set + ", these wires are of " + wires.set().name(), false);
    }
    TriedWire was = Thinking.tried(trial.entry());
    if (was != null && !was.equals(tried)) {
      throw new Refused(name + " tried " + was.label() + ", not " + tried.label(), false);
    }
    String missing = TrialEvidence.missing(trial.summary());
    if (missing != null) {
      throw new Refused(name + " " + missing + ": it says nothing about " + tried.wire(), false);
    }
    TrialComparison comparison = Thinking.compare(log, trial, tried.wire());
    String sentence = Thinking.sentence(tried, comparison);
    if (comparison == null) {
      throw new Refused(sentence, true);
    }
    WireStep.Trial step =
        new WireStep.Trial(
            tried.wire(),
            tried.place(),
            (int) trial.entry().number(),
            comparison.judged().verdict(),
            comparison.judged().figures());
    return new Judged(step, sentence);
  }
}
