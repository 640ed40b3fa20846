package firstamp.model;

import java.util.Arrays;

/**
 * All channels over 10 ms, reduced to integers: sum, lowest, highest and sum of squares of the
 * counts of each channel.
 *
 * <p>The same integers whether the probe or the host reduced them. Always complete: a 10 ms in
 * which a conversion was lost gives no reading but a gap. Immutable.
 */
public final class Reading {
  private static final int CHANNELS = 8;

  private final long firstIndex;
  private final int[] sums;
  private final int[] lowest;
  private final int[] highest;
  private final long[] squares;

  /**
   * Takes copies of the arrays.
   *
   * @param firstIndex index of the first conversion, a multiple of 160
   * @param sums per channel, counts
   * @param lowest per channel, counts
   * @param highest per channel, counts
   * @param squares per channel, counts squared
   */
  public Reading(long firstIndex, int[] sums, int[] lowest, int[] highest, long[] squares) {
    if (Math.floorMod(firstIndex, SamplePlan.CONVERSIONS_PER_READING) != 0) {
      throw new IllegalArgumentException(
          "reading at conversion " + firstIndex + ", expected a multiple of 160");
    }
    if (sums.length != CHANNELS
        || lowest.length != CHANNELS
        || highest.length != CHANNELS
        || squares.length != CHANNELS) {
      throw new IllegalArgumentException("a reading has 8 channels");
    }
    this.firstIndex = firstIndex;
    this.sums = sums.clone();
    this.lowest = lowest.clone();
    this.highest = highest.clone();
    this.squares = squares.clone();
  }

  /** Index of the first conversion since the probe's start. */
  public long firstIndex() {
    return firstIndex;
  }

  /** Start, microseconds since the probe's start. */
  public long startMicros() {
    return SamplePlan.microsOf(firstIndex);
  }

  /** End (start of the next reading), microseconds since the probe's start. */
  public long endMicros() {
    return SamplePlan.microsOf(firstIndex + SamplePlan.CONVERSIONS_PER_READING);
  }

  /** Sum of the channel's counts. */
  public int sum(Channel channel) {
    return sums[channel.ordinal()];
  }

  /** Lowest count of the channel. */
  public int lowest(Channel channel) {
    return lowest[channel.ordinal()];
  }

  /** Highest count of the channel. */
  public int highest(Channel channel) {
    return highest[channel.ordinal()];
  }

  /** Sum of the squares of the channel's counts. */
  public long sumOfSquares(Channel channel) {
    return squares[channel.ordinal()];
  }

  /** Mean of the channel, counts. */
  public double meanCounts(Channel channel) {
    return (double) sums[channel.ordinal()] / channel.conversionsPerReading();
  }

  /** Root of the mean square about the mean, counts: exact, from the integer sums. */
  public double deviationCounts(Channel channel) {
    long n = channel.conversionsPerReading();
    long sum = sums[channel.ordinal()];
    long spread = n * squares[channel.ordinal()] - sum * sum;
    return Math.sqrt((double) Math.max(0, spread)) / n;
  }

  /** Whether a conversion of the channel stood at either end of the range. */
  public boolean clipped(Channel channel) {
    return lowest[channel.ordinal()] <= 0 || highest[channel.ordinal()] >= 1023;
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Reading that
        && firstIndex == that.firstIndex
        && Arrays.equals(sums, that.sums)
        && Arrays.equals(lowest, that.lowest)
        && Arrays.equals(highest, that.highest)
        && Arrays.equals(squares, that.squares);
  }

  @Override
  public int hashCode() {
    return Long.hashCode(firstIndex) * 31 + Arrays.hashCode(sums);
  }

  @Override
  public String toString() {
    return "Reading[firstIndex=" + firstIndex + ", sums=" + Arrays.toString(sums) + "]";
  }
}
