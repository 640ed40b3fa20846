package firstamp.protocol.rules;

import firstamp.protocol.RailWindow;
import firstamp.protocol.SlotPlan;
import firstamp.protocol.TripCause;
import firstamp.protocol.TripLimits;

/**
 * The probe's limits on conversions while the switch is closed: what the chip decides, conversion
 * by conversion, in its own integers and order (trip-rules.md). One object per closing.
 *
 * <p>Not decided by conversions, so not here: hard short, host silence, chassis clip, self-test.
 */
public final class TripRules {
  /** From the start of the deciding conversion to the switch pin low. */
  public static final int PIN_LOW_MICROS = 45;

  private static final int CONVERSIONS_PER_MILLI = 16;

  /** A level is held under the converter's end, so that a converter at its end is always over. */
  private static final int HIGHEST_LEVEL_COUNTS = 1022;

  private static final long HIGHEST_SUM = 0xFFFF_FFFFL;

  private final Zeros zeros;
  private final long closedIndex;
  private final RowCounter surge = new RowCounter();
  private final RowCounter fine = new RowCounter();
  private final RowCounter peak = new RowCounter();
  private final RowCounter volts = new RowCounter();
  private final RowCounter[] rails = {new RowCounter(), new RowCounter(), new RowCounter()};
  private final RollingMeans means;
  private TripLimits limits;
  private boolean running;
  private long i2tCounts2;

  /**
   * Nothing counted yet.
   *
   * @param limits in force
   * @param zeros taken before the closing
   * @param closedIndex the conversion at whose start the switch closed
   */
  public TripRules(TripLimits limits, Zeros zeros, long closedIndex) {
    this.limits = limits;
    this.zeros = zeros;
    this.closedIndex = closedIndex;
    this.means = new RollingMeans(zeros);
  }

  /** Other limits from the next conversion on; what was counted stays. */
  public void tighten(TripLimits tighter) {
    limits = tighter;
  }

  /** I2t sum so far, counts squared times conversions of I. */
  public long i2tCounts2() {
    return i2tCounts2;
  }

  /** Its budget, 0 = not watched. */
  public long i2tBudgetCounts2() {
    return limits.i2tBudgetCounts2();
  }

  /**
   * Takes the next conversion that was made; one that was lost is left out.
   *
   * @param index number of the conversion, not before the closing
   * @return null = nothing to do
   */
  public TripDecision conversion(long index, int counts) {
    int channel = SlotPlan.channelAt((int) (index % SlotPlan.SLOTS));
    TripDecision decision =
        switch (channel) {
          case SlotPlan.I -> coarse(index, counts);
          case SlotPlan.J -> fineCurrent(index, counts);
          case SlotPlan.V -> supplyVolts(index, counts);
          case SlotPlan.R1, SlotPlan.R2, SlotPlan.R3 -> rail(index, channel, counts);
          default -> null;
        };
    TripDecision mean = means.conversion(index, channel, counts, running, limits);
    return decision != null ? decision : mean;
  }

  private TripDecision coarse(long index, int counts) {
    running |= index - closedIndex >= (long) limits.inrushMillis() * CONVERSIONS_PER_MILLI;
    int limitCounts = running ? limits.runningICounts() : limits.inrushICounts();
    TripCause cause = running ? TripCause.RUNNING : TripCause.INRUSH;
    TripDecision decision = current(surge, cause, index, counts, limitCounts);
    if (decision == null && running) {
      decision = current(peak, TripCause.PEAK, index, counts, limits.peakICounts());
    }
    TripDecision spent = i2t(index, counts);
    return decision != null ? decision : spent;
  }

  private TripDecision current(
      RowCounter row, TripCause cause, long index, int counts, int limitCounts) {
    int level = level(zeros.iSixteenths(), limitCounts);
    boolean over = limitCounts != 0 && counts > level;
    return row.over(over, limits.confirmI(), SlotPlan.microsOf(index))
        ? row.decides(cause, SlotPlan.I, counts, level)
        : null;
  }

  private TripDecision i2t(long index, int counts) {
    long above = Math.max(0, counts - Zeros.counts(zeros.iSixteenths()));
    long ran = limits.i2tRunningICounts();
    i2tCounts2 = Math.max(0, Math.min(HIGHEST_SUM, i2tCounts2 + above * above) - ran * ran);
    if (limits.i2tBudgetCounts2() == 0 || i2tCounts2 <= limits.i2tBudgetCounts2()) {
      return null;
    }
    long tick = SlotPlan.microsOf(index);
    return new TripDecision(TripCause.I2T, SlotPlan.I, 1, tick, counts, 0);
  }

  private TripDecision fineCurrent(long index, int counts) {
    int level = level(zeros.jSixteenths(), limits.runningJCounts());
    boolean over = running && limits.runningJCounts() != 0 && counts > level;
    return fine.over(over, limits.confirmJ(), SlotPlan.microsOf(index))
        ? fine.decides(TripCause.RUNNING, SlotPlan.J, counts, level)
        : null;
  }

  private TripDecision supplyVolts(long index, int counts) {
    int level = level(zeros.vSixteenths(), limits.overVCounts());
    boolean over = limits.overVCounts() != 0 && counts > level;
    return volts.over(over, limits.confirmV(), SlotPlan.microsOf(index))
        ? volts.decides(TripCause.OVER_VOLTAGE, SlotPlan.V, counts, level)
        : null;
  }

  private TripDecision rail(long index, int channel, int counts) {
    int rail = channel - SlotPlan.R1;
    RailWindow window = limits.rails().get(rail);
    RowCounter row = rails[rail];
    boolean low = counts < window.lowCounts();
    boolean over = low || counts > window.highCounts();
    return row.over(over, limits.confirmRail(), SlotPlan.microsOf(index))
        ? row.decides(
            TripCause.OVER_VOLTAGE, channel, counts, low ? window.lowCounts() : window.highCounts())
        : null;
  }

  private static int level(int zeroSixteenths, int limitCounts) {
    return Math.min(Zeros.counts(zeroSixteenths) + limitCounts, HIGHEST_LEVEL_COUNTS);
  }
}
