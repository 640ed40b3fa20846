package firstamp.protocol.values;

import java.util.List;

/**
 * What 0 and 1024 counts of a channel mean, in its base unit: I and J microampere; V, R1..R3 and M
 * microvolt; H nanovolt.
 *
 * @param zero value at 0 counts
 * @param full value at 1024 counts
 */
public record ChannelScale(int zero, int full) {
  private static final int FULL_COUNTS = 1024;
  private static final ChannelScale RAIL = new ChannelScale(-20_000_000, 20_000_000);
  private static final List<ChannelScale> NOMINAL =
      List.of(
          new ChannelScale(-244_141, 12_255_859),
          new ChannelScale(-7_813, 392_188),
          new ChannelScale(-601_504, 60_992_496),
          RAIL,
          RAIL,
          RAIL,
          new ChannelScale(-10_000_000, 10_000_000),
          new ChannelScale(-2_500_000, 2_500_000));

  /**
   * The scales of a probe that was never calibrated, in channel order; I and J stand at 20 counts
   * and V at 10 when nothing is there, as the circuit gives it.
   */
  public static List<ChannelScale> nominal() {
    return NOMINAL;
  }

  /** The value in base units of a number of counts, which may be a mean. */
  public double valueAt(double counts) {
    return zero + ((double) full - zero) * counts / FULL_COUNTS;
  }

  /** The base units that one count is worth; negative where the input is turned round. */
  public double valuePerCount() {
    return ((double) full - zero) / FULL_COUNTS;
  }

  /** The counts that a perfect converter gives for a value: rounded, held to 0..1023. */
  public int countsAt(double value) {
    double counts = Math.floor((value - zero) / ((double) full - zero) * FULL_COUNTS + 0.5);
    return (int) Math.max(0, Math.min(Check.HIGHEST_COUNT, counts));
  }
}
