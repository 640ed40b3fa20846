package firstamp.pipeline;

import firstamp.model.samples.Reading;
import firstamp.model.samples.SamplePlan;

/** The highest 10 ms mean of the supply current in the last five seconds. Not thread-safe. */
public final class RecentHighest {
  private static final int READINGS = 500;

  private final double[] ampere = new double[READINGS];
  private int held;
  private int next;
  private long nextIndex = -1;

  /** A hole in the readings restarts it: what was in the hole is not known. */
  public void take(Reading reading, double supplyA) {
    if (reading.firstIndex() != nextIndex) {
      forget();
    }
    nextIndex = reading.firstIndex() + SamplePlan.CONVERSIONS_PER_READING;
    ampere[next] = supplyA;
    next = (next + 1) % READINGS;
    held = Math.min(READINGS, held + 1);
  }

  public void forget() {
    held = 0;
    next = 0;
  }

  /** Whether five whole seconds are there. */
  public boolean full() {
    return held == READINGS;
  }

  public double ampere() {
    double highest = 0;
    for (int k = 0; k < held; k++) {
      highest = Math.max(highest, ampere[k]);
    }
    return highest;
  }

  /** The limit for hands in: a tenth above, and at least 10 mA. */
  public double drawnIn() {
    double highest = ampere();
    return Math.max(1.1 * highest, highest + 0.010);
  }
}
