package firstamp.protocol.rules;

import firstamp.protocol.codes.TripCause;
import firstamp.protocol.values.RailWindow;
import firstamp.protocol.values.SlotPlan;
import firstamp.protocol.values.TripLimits;

/**
 * The probe's limits on conversions while the switch is closed: what the chip decides, conversion
 * by conversion, in its own integers and order (trip-rules.md). One object per closing.
 *
 * <p>Not decided by conversions, so not here: hard short, host silence, chassis clip, self-test but
 * of a coarse input that has died.
 */
public final class TripRules {
  /** From the start of the deciding conversion to the switch pin low. */
  public static final int PIN_LOW_MICROS = 45;

  /** After a start is over, for 5 s no other is allowed: conversions of I. */
  private static final int START_RESTS = 20_000;

  private static final int I_PER_MILLI = 4;
  private static final int CONVERSIONS_PER_MILLI = 16;

  /** J that cannot go on while I has not begun, three times: the coarse input is dead. */
  private static final int J_FAR_UP_COUNTS = 1000;

  private static final int I_AT_REST_COUNTS = 20;
  private static final int DEAD_IN_ROW = 3;

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
  private Phase phase = Phase.INRUSH;
  private Phase phaseBefore = Phase.INRUSH;
  private boolean startRests;
  private int passedI;
  private boolean held;
  private int lastI;
  private int deadInRow;
  private long i2tCounts2;

  /** Which limit acts on I. */
  private enum Phase {
    INRUSH,
    RUNNING,
    START
  }

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

  /** The limiter holds a surge, and until its time is over: the limits on I and J rest. */
  public void held(boolean nowHeld) {
    held = nowHeld;
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
    TripDecision mean = means.conversion(index, channel, counts, phase == Phase.RUNNING, limits);
    if (decision == null && mean != null && startBegins()) {
      return null;
    }
    return decision != null ? decision : mean;
  }

  private TripDecision coarse(long index, int counts) {
    timeGoesOn(index);
    lastI = counts;
    TripDecision decision =
        switch (phase) {
          case INRUSH -> current(surge, TripCause.INRUSH, index, counts, limits.inrushICounts());
          case RUNNING ->
              orStart(current(surge, TripCause.RUNNING, index, counts, limits.runningICounts()));
          case START -> current(surge, TripCause.START, index, counts, limits.startICounts());
        };
    if (decision == null && phaseBefore != Phase.INRUSH) {
      decision = current(peak, TripCause.PEAK, index, counts, limits.peakICounts());
    }
    TripDecision spent = i2t(index, counts);
    return decision != null ? decision : spent;
  }

  /** Inrush time by the conversions' numbers; a start, and the rest after it, by those of I. */
  private void timeGoesOn(long index) {
    switch (phase) {
      case INRUSH -> {
        if (index - closedIndex >= (long) limits.inrushMillis() * CONVERSIONS_PER_MILLI) {
          phase = Phase.RUNNING;
        }
      }
      case START -> {
        if (passedI++ >= startConversions()) {
          phase = Phase.RUNNING;
          startRests = true;
          passedI = 0;
        }
      }
      case RUNNING -> {
        if (startRests && passedI++ >= START_RESTS) {
          startRests = false;
        }
      }
    }
    phaseBefore = phase;
  }

  private int startConversions() {
    return limits.startICounts() == 0 ? 0 : limits.startMillis() * I_PER_MILLI;
  }

  /** What the running limit has found begins the start instead, if one is allowed now. */
  private TripDecision orStart(TripDecision found) {
    return found != null && startBegins() ? null : found;
  }

  private boolean startBegins() {
    if (startConversions() == 0 || startRests) {
      return false;
    }
    phase = Phase.START;
    passedI = 0;
    surge.clear();
    fine.clear();
    means.clear();
    return true;
  }

  private TripDecision current(
      RowCounter row, TripCause cause, long index, int counts, int limitCounts) {
    int level = level(zeros.iSixteenths(), limitCounts);
    boolean over = limitCounts != 0 && counts > level && !held;
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
    TripDecision dead = farUp(index, counts);
    int level = level(zeros.jSixteenths(), limits.runningJCounts());
    boolean watched = phase == Phase.RUNNING && !held && limits.runningJCounts() != 0;
    boolean over =
        fine.over(watched && counts > level, limits.confirmJ(), SlotPlan.microsOf(index));
    if (dead != null || !over) {
      return dead;
    }
    return orStart(fine.decides(TripCause.RUNNING, SlotPlan.J, counts, level));
  }

  /** All limits above the fine range use I. */
  private TripDecision farUp(long index, int counts) {
    boolean atRest = lastI < Zeros.counts(zeros.iSixteenths()) + I_AT_REST_COUNTS;
    deadInRow = counts > J_FAR_UP_COUNTS && atRest ? deadInRow + 1 : 0;
    if (deadInRow < DEAD_IN_ROW) {
      return null;
    }
    long first = SlotPlan.microsOf(index - (DEAD_IN_ROW - 1L) * SlotPlan.SLOTS);
    return new TripDecision(TripCause.SELF_TEST, SlotPlan.J, DEAD_IN_ROW, first, counts, 0);
  }

  private TripDecision supplyVolts(long index, int counts) {
    int level = level(zeros.vSixteenths(), limits.overVCounts());
    boolean rings = index - closedIndex < CONVERSIONS_PER_MILLI;
    boolean over = limits.overVCounts() != 0 && counts > level && !rings;
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
