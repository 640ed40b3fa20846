package firstamp.alarm;

import firstamp.model.samples.Channel;

/**
 * Whether an opening of the switch is seen: the volts on the set fall. The pin alone proves
 * nothing, a switch that failed shorted or a second supply holds them up.
 *
 * <p>It must be seen within 2 s, for which the bleeder of the probe is enough. What the set drew
 * allows no shorter time: a current that was still charging says nothing of what empties the
 * capacitors afterwards (the scenario "limiting" needs half a second at 1.5 A).
 */
final class OpeningProof {
  /** Over the noise of a mean of five conversions. */
  private static final double FALL_COUNTS = 3;

  private static final long LONGEST_MICROS = 2_000_000;

  /** Under a tenth of nominal there is nothing that could fall; the current is judged alone. */
  private static final double LITTLE = 0.1;

  private final RunState run;
  private double lastV;
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
    boolean little = lastV < LITTLE * run.sheet().supply().nominalV();
    if (little || now.supplyV() < lastV - fallV()) {
      seen = true;
      return Step.SEEN;
    }
    if (!overdue && now.toMicros() - run.openedMicros() > LONGEST_MICROS) {
      overdue = true;
      return Step.OVERDUE;
    }
    return Step.NOTHING;
  }

  /** Volts that have to be missing. */
  private double fallV() {
    return FALL_COUNTS * Math.abs(run.scaling().calibration().scale(Channel.V).perCount());
  }
}
