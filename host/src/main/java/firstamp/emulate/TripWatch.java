package firstamp.emulate;

import firstamp.model.Channel;
import firstamp.protocol.TripCause;
import firstamp.protocol.TripLimits;

/**
 * The limits on conversions while the switch is closed, in the firmware's integers (wire-format.md
 * section 4). Made anew at every closing.
 */
final class TripWatch {
  private static final int CONVERSIONS_PER_MILLI = 16;

  /** A level is held under the converter's end, so that a converter at its end is always over. */
  private static final int HIGHEST_LEVEL_COUNTS = Converter.HIGHEST_COUNTS - 1;

  private static final long HIGHEST_SUM = 0xFFFF_FFFFL;

  private final Zeros zeros;
  private final long closedAt;
  private final RowCounter surge = new RowCounter();
  private final RowCounter fine = new RowCounter();
  private final RowCounter peak = new RowCounter();
  private final RowCounter volts = new RowCounter();
  private final RowCounter[] rails = {new RowCounter(), new RowCounter(), new RowCounter()};
  private final MeanWatch mean;
  private TripLimits limits;
  private long i2tCounts2;

  /**
   * @param closedAt the conversion at whose start the switch closed
   */
  TripWatch(TripLimits limits, Zeros zeros, long closedAt) {
    this.limits = limits;
    this.zeros = zeros;
    this.closedAt = closedAt;
    this.mean = new MeanWatch(zeros);
  }

  void tighten(TripLimits tighter) {
    limits = tighter;
  }

  /** Surge heat so far, counts squared times conversions. */
  long i2tCounts2() {
    return i2tCounts2;
  }

  /** Looks at one conversion; null = nothing to do. */
  Decision conversion(long n, Channel channel, int counts, long tickMicros) {
    boolean running = n - closedAt >= (long) limits.inrushMillis() * CONVERSIONS_PER_MILLI;
    Decision decision =
        switch (channel) {
          case I -> coarse(running, counts, tickMicros);
          case J -> running ? fineCurrent(counts, tickMicros) : null;
          case V -> supplyVolts(counts, tickMicros);
          case R1, R2, R3 -> rail(channel, counts, tickMicros);
          default -> null;
        };
    Decision meanDecision =
        running ? mean.conversion(n, channel, counts, tickMicros, limits) : null;
    return decision != null ? decision : meanDecision;
  }

  private Decision coarse(boolean running, int counts, long tick) {
    int limitCounts = running ? limits.runningICounts() : limits.inrushICounts();
    TripCause cause = running ? TripCause.RUNNING : TripCause.INRUSH;
    Decision decision =
        over(
            surge,
            cause,
            Channel.I,
            counts,
            limitCounts,
            zeros.iSixteenths(),
            limits.confirmI(),
            tick);
    if (decision == null && running) {
      decision =
          over(
              peak,
              TripCause.PEAK,
              Channel.I,
              counts,
              limits.peakICounts(),
              zeros.iSixteenths(),
              limits.confirmI(),
              tick);
    }
    Decision spent = heat(counts, tick);
    return decision != null ? decision : spent;
  }

  private Decision heat(int counts, long tick) {
    long above = Math.max(0, counts - Zeros.counts(zeros.iSixteenths()));
    long ran = limits.i2tRunningICounts();
    i2tCounts2 = Math.max(0, Math.min(HIGHEST_SUM, i2tCounts2 + above * above) - ran * ran);
    if (limits.i2tBudgetCounts2() == 0 || i2tCounts2 <= limits.i2tBudgetCounts2()) {
      return null;
    }
    return new Decision(TripCause.I2T, Channel.I.ordinal(), 1, tick, counts, 0);
  }

  private Decision fineCurrent(int counts, long tick) {
    return over(
        fine,
        TripCause.RUNNING,
        Channel.J,
        counts,
        limits.runningJCounts(),
        zeros.jSixteenths(),
        limits.confirmJ(),
        tick);
  }

  private static int level(int zeroSixteenths, int limitCounts) {
    return Math.min(Zeros.counts(zeroSixteenths) + limitCounts, HIGHEST_LEVEL_COUNTS);
  }

  private static Decision over(
      RowCounter row,
      TripCause cause,
      Channel channel,
      int counts,
      int limitCounts,
      int zeroSixteenths,
      int confirm,
      long tick) {
    int absolute = level(zeroSixteenths, limitCounts);
    boolean over = limitCounts != 0 && counts > absolute;
    return row.over(over, confirm, tick)
        ? new Decision(
            cause, channel.ordinal(), row.inRow(), row.firstTickMicros(), counts, absolute)
        : null;
  }

  private Decision supplyVolts(int counts, long tick) {
    int absolute = level(zeros.vSixteenths(), limits.overVCounts());
    boolean over = limits.overVCounts() != 0 && counts > absolute;
    return volts.over(over, limits.confirmV(), tick)
        ? new Decision(
            TripCause.OVER_VOLTAGE,
            Channel.V.ordinal(),
            volts.inRow(),
            volts.firstTickMicros(),
            counts,
            absolute)
        : null;
  }

  private Decision rail(Channel channel, int counts, long tick) {
    int rail = channel.ordinal() - Channel.R1.ordinal();
    int low = limits.rails().get(rail).lowCounts();
    int high = limits.rails().get(rail).highCounts();
    RowCounter row = rails[rail];
    return row.over(counts < low || counts > high, limits.confirmRail(), tick)
        ? new Decision(
            TripCause.OVER_VOLTAGE,
            channel.ordinal(),
            row.inRow(),
            row.firstTickMicros(),
            counts,
            counts < low ? low : high)
        : null;
  }
}
