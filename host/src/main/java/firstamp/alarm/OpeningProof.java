package firstamp.alarm;

import firstamp.model.Rest;
import firstamp.model.samples.Channel;

/**
 * Whether an opening of the switch is seen: the volts on the set fall. The pin alone proves
 * nothing, a switch that failed shorted or a second supply holds them up.
 *
 * <p>It must be seen within 20 ms; where what the set drew needs longer to discharge what the look
 * or the sheet knows of its capacitors, within three times that, and where nothing is known or
 * nothing draws within 2 s, for which the bleeder of the probe is enough.
 */
final class OpeningProof {
  /** Over the noise of a mean of five conversions. */
  private static final double FALL_COUNTS = 3;

  private static final double DRAWS_A = 0.002;
  private static final double PATIENCE = 3;
  private static final double QUICK_S = 0.02;
  private static final double LONGEST_S = 2;

  /** Under a tenth of nominal there is nothing that could fall; the current is judged alone. */
  private static final double LITTLE = 0.1;

  private final RunState run;
  private double lastV;
  private double lastA;
  private boolean seen = true;
  private boolean overdue;

  /** What a reading after the opening says. */
  enum Step {
    /** Nothing new. */
    NOTHING,
    /** The opening is seen for the first time. */
    SEEN,
    /** It should have been seen by now. */
    OVERDUE
  }

  OpeningProof(RunState run) {
    this.run = run;
  }

  /** A reading with the switch closed. */
  void on(ReadingWindow now) {
    lastV = now.supplyV();
    lastA = now.supplyA();
  }

  void opened() {
    seen = false;
    overdue = false;
  }

  /** Whether the switch was opened long ago and nothing has shown it. */
  boolean overdue() {
    return overdue && !seen;
  }

  /** A reading after the opening. */
  Step judge(ReadingWindow now) {
    if (seen || run.setup().observe()) {
      return Step.NOTHING;
    }
    double fallV = fallV();
    boolean little = lastV < LITTLE * run.sheet().supply().nominalV();
    if (little || now.supplyV() < lastV - fallV) {
      seen = true;
      return Step.SEEN;
    }
    if (!overdue && now.toMicros() - run.openedMicros() > 1e6 * withinS(fallV)) {
      overdue = true;
      return Step.OVERDUE;
    }
    return Step.NOTHING;
  }

  /** Volts that have to be missing. */
  private double fallV() {
    return FALL_COUNTS * Math.abs(run.scaling().calibration().scale(Channel.V).perCount());
  }

  private double withinS(double fallV) {
    double farad = Rest.knownFarad(run.sheet(), run.lookFarad());
    if (farad <= 0 || lastA < DRAWS_A) {
      return LONGEST_S;
    }
    return Math.min(LONGEST_S, Math.max(QUICK_S, PATIENCE * farad * fallV / lastA));
  }

  /** Volts on the set just before it opened. */
  double lastV() {
    return lastV;
  }
}
