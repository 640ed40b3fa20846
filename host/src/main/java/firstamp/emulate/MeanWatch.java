package firstamp.emulate;

import firstamp.model.Channel;
import firstamp.model.SamplePlan;
import firstamp.protocol.TripCause;
import firstamp.protocol.TripLimits;

/** The mean of the last 100 ms of I and J, once every reading, from the end of the inrush time. */
final class MeanWatch {
  private static final int READINGS = 10;
  private static final int HIGHEST_FINE_COUNTS = 1000;

  private final Zeros zeros;
  private final int[] sumI = new int[READINGS];
  private final int[] sumJ = new int[READINGS];
  private final boolean[] full = new boolean[READINGS];
  private long readings;
  private boolean started;
  private int runI;
  private int runJ;
  private boolean runFull;

  MeanWatch(Zeros zeros) {
    this.zeros = zeros;
  }

  Decision conversion(long n, Channel channel, int counts, long tick, TripLimits limits) {
    if (!started) {
      if (n % SamplePlan.CONVERSIONS_PER_READING != 0) {
        return null;
      }
      started = true;
    }
    if (channel == Channel.I) {
      runI += counts;
    } else if (channel == Channel.J) {
      runJ += counts;
      runFull |= counts > HIGHEST_FINE_COUNTS;
    }
    return n % SamplePlan.CONVERSIONS_PER_READING == SamplePlan.CONVERSIONS_PER_READING - 1
        ? endOfReading(tick, limits)
        : null;
  }

  private Decision endOfReading(long tick, TripLimits limits) {
    int at = (int) (readings++ % READINGS);
    sumI[at] = runI;
    sumJ[at] = runJ;
    full[at] = runFull;
    runI = 0;
    runJ = 0;
    runFull = false;
    if (readings < READINGS) {
      return null;
    }
    int allI = 0;
    int allJ = 0;
    boolean anyFull = false;
    for (int i = 0; i < READINGS; i++) {
      allI += sumI[i];
      allJ += sumJ[i];
      anyFull |= full[i];
    }
    // 400 conversions of I, 50 of J; compared as sums, so that no division rounds.
    int limitI = zeros.iSixteenths() + limits.meanISixteenths();
    int limitJ = zeros.jSixteenths() + limits.meanJSixteenths();
    if (limits.meanISixteenths() != 0 && allI > limitI * 25) {
      return new Decision(TripCause.MEAN, Channel.I.ordinal(), 1, tick, allI / 25, limitI);
    }
    if (limits.meanJSixteenths() != 0 && !anyFull && allJ * 8 > limitJ * 25) {
      return new Decision(TripCause.MEAN, Channel.J.ordinal(), 1, tick, allJ * 8 / 25, limitJ);
    }
    return null;
  }
}
