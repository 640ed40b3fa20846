package firstamp.study;

import firstamp.locate.wire.TriedWire;
import firstamp.locate.wire.WireCase;
import firstamp.locate.wire.WireStep;
import firstamp.log.BenchLog;
import firstamp.log.LogException;
import firstamp.model.text.Explained;
import firstamp.model.text.Worded;
import firstamp.sheet.SheetException;

/** Takes a logged power-up as the trial of a wire, or says why it is none. */
public final class TrialJudge {
  private TrialJudge() {}

  /**
   * A trial with its verdict.
   *
   * @param step to be kept
   * @param words for the person
   */
  public record Judged(WireStep.Trial step, Worded words) {}

  /** A power-up that says nothing about a wire; the message says why. */
  public static final class Refused extends Exception implements Explained {
    private static final long serialVersionUID = 1;

    private final boolean nothingToCompare;
    private final transient Worded words;

    Refused(Worded words, boolean nothingToCompare) {
      super(words.english());
      this.words = words;
      this.nothingToCompare = nothingToCompare;
    }

    @Override
    public Worded words() {
      return words;
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
    long number = trial.entry().number();
    String set = trial.entry().setName();
    if (!set.equals(wires.set().name())) {
      throw new Refused(Thinking.say("refused.set", number, set, wires.set().name()), false);
    }
    TriedWire was = Thinking.tried(trial.entry());
    if (was != null && !was.equals(tried)) {
      throw new Refused(Thinking.say("refused.tried", number, was.label(), tried.label()), false);
    }
    Worded missing = TrialEvidence.missing(trial.summary(), number, tried.wire());
    if (missing != null) {
      throw new Refused(missing, false);
    }
    TrialComparison comparison = Thinking.compare(log, trial, tried.wire());
    Worded words = Thinking.sentence(tried, comparison);
    if (comparison == null) {
      throw new Refused(words, true);
    }
    WireStep.Trial step =
        new WireStep.Trial(
            tried.wire(),
            tried.place(),
            (int) trial.entry().number(),
            comparison.judged().verdict(),
            comparison.judged().figures());
    return new Judged(step, words);
  }
}
