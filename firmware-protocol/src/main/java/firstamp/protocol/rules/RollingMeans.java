package firstamp.protocol.rules;

import firstamp.protocol.codes.TripCause;
import firstamp.protocol.values.SlotPlan;
import firstamp.protocol.values.TripLimits;

/** The means of I and J over the last ten whole readings that began after the inrush time. */
final class RollingMeans {
  private static final int READINGS = 10;
  private static final int HIGHEST_FINE_COUNTS = 1000;
  private static final int I_PER_READING = SlotPlan.conversionsPerReading(SlotPlan.I);
  private static final int J_PER_READING = SlotPlan.conversionsPerReading(SlotPlan.J);

  /**
   * 400 conversions of I: their sum over 25 is the mean in 1/16 count; 50 of J: 8 times as much.
   */
  private static final int SUM_PER_SIXTEENTH = 25;

  private static final int J_TIMES = 8;

  private final Zeros zeros;
  private final int[] sumI = new int[READINGS];
  private final int[] sumJ = new int[READINGS];
  private final boolean[] spoiled = new boolean[READINGS];
  private int readings;
  private boolean begun;
  private int runI;
  private int runJ;
  private int countI;
  private int countJ;
  private boolean runVoid;

  RollingMeans(Zeros zeros) {
    this.zeros = zeros;
  }

  /** Takes a conversion; {@code running}: the inrush time is over. Null = nothing to do. */
  TripDecision conversion(long index, int channel, int counts, boolean running, TripLimits limits) {
    int place = (int) (index % SlotPlan.CONVERSIONS_PER_READING);
    if (place == 0 && running) {
      begin();
    }
    if (channel == SlotPlan.I) {
      runI += counts;
      countI++;
    } else if (channel == SlotPlan.J) {
      runJ += counts;
      countJ++;
      runVoid |= counts > HIGHEST_FINE_COUNTS;
    }
    return begun && place == SlotPlan.CONVERSIONS_PER_READING - 1
        ? endOfReading(index, limits)
        : null;
  }

  /** Restarts with the next reading. */
  void clear() {
    begun = false;
    readings = 0;
  }

  private void begin() {
    begun = true;
    runI = 0;
    runJ = 0;
    countI = 0;
    countJ = 0;
    runVoid = false;
  }

  private TripDecision endOfReading(long index, TripLimits limits) {
    begun = false;
    if (countI != I_PER_READING || countJ != J_PER_READING) {
      readings = 0;
      return null;
    }
    int at = readings++ % READINGS;
    sumI[at] = runI;
    sumJ[at] = runJ;
    spoiled[at] = runVoid;
    if (readings < READINGS) {
      return null;
    }
    readings = READINGS + at + 1;
    int allI = 0;
    int allJ = 0;
    boolean anyVoid = false;
    for (int i = 0; i < READINGS; i++) {
      allI += sumI[i];
      allJ += sumJ[i];
      anyVoid |= spoiled[i];
    }
    int meanI = allI / SUM_PER_SIXTEENTH;
    int meanJ = allJ * J_TIMES / SUM_PER_SIXTEENTH;
    int limitI = zeros.iSixteenths() + limits.meanISixteenths();
    int limitJ = zeros.jSixteenths() + limits.meanJSixteenths();
    long tick = SlotPlan.microsOf(index);
    if (limits.meanISixteenths() != 0 && meanI > limitI) {
      return new TripDecision(TripCause.MEAN, SlotPlan.I, 1, tick, meanI, limitI);
    }
    if (limits.meanJSixteenths() != 0 && !anyVoid && meanJ > limitJ) {
      return new TripDecision(TripCause.MEAN, SlotPlan.J, 1, tick, meanJ, limitJ);
    }
    return null;
  }
}
