package firstamp.model.samples;

import java.util.Arrays;

/**
 * All channels over 10 ms, reduced to integers: sum, lowest, highest and sum of squares of the
 * counts of each channel.
 *
 * <p>The same integers whether the probe or the host reduced them. Always complete: a 10 ms in
 * which a conversion was lost gives no reading but a gap. Immutable.
 */
public final class Reading {
  static final int CHANNELS = 8;

  /** Where the lowest counts begin. */
  static final int LOWEST = CHANNELS;

  /** Where the highest begin. */
  static final int HIGHEST = 2 * CHANNELS;

  private final long firstIndex;

  /** Per channel the sums, then the lowest, then the highest. */
  private final int[] counts;

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
    this.counts = new int[3 * CHANNELS];
    System.arraycopy(sums, 0, counts, 0, CHANNELS);
    System.arraycopy(lowest, 0, counts, LOWEST, CHANNELS);
    System.arraycopy(highest, 0, counts, HIGHEST, CHANNELS);
    this.squares = squares.clone();
  }

  /** The arrays are handed over, not copied: the reducer never touches them again. */
  Reading(long firstIndex, int[] counts, long[] squares) {
    this.firstIndex = firstIndex;
    this.counts = counts;
    this.squares = squares;
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
    return counts[channel.ordinal()];
  }

  /** Lowest count of the channel. */
  public int lowest(Channel channel) {
    return counts[LOWEST + channel.ordinal()];
  }

  /** Highest count of the channel. */
  public int highest(Channel channel) {
    return counts[HIGHEST + channel.ordinal()];
  }

  /** Sum of the squares of the channel's counts. */
  public long sumOfSquares(Channel channel) {
    return squares[channel.ordinal()];
  }

  /** Mean of the channel, counts. */
  public double meanCounts(Channel channel) {
    return (double) counts[channel.ordinal()] / channel.conversionsPerReading();
  }

  /** Root of the mean square about the mean, counts: exact, from the integer sums. */
  public double deviationCounts(Channel channel) {
    long n = channel.conversionsPerReading();
    long sum = counts[channel.ordinal()];
    long spread = n * squares[channel.ordinal()] - sum * sum;
    return Math.sqrt((double) Math.max(0, spread)) / n;
  }

  /** Whether a conversion of the channel was at either end of the range. */
  public boolean clipped(Channel channel) {
    return lowest(channel) <= 0 || highest(channel) >= 1023;
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Reading that
        && firstIndex == that.firstIndex
        && Arrays.equals(counts, that.counts)
        && Arrays.equals(squares, that.squares);
  }

  @Override
  public int hashCode() {
    return Long.hashCode(firstIndex) * 31 + Arrays.hashCode(counts);
  }

  @Override
  public String toString() {
    String sums = Arrays.toString(Arrays.copyOf(counts, CHANNELS));
    return "Reading[firstIndex=" + firstIndex + ", sums=" + sums + "]";
  }
}
