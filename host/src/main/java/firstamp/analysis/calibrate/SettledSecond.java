package firstamp.analysis.calibrate;

import firstamp.model.samples.Channel;
import firstamp.model.samples.Reading;
import java.util.ArrayDeque;
import java.util.Deque;

/**
 * The latest second of readings, and whether a channel held still in it.
 *
 * <p>Still means: the ten means of 100 ms lie within 1 count, or within six times their own
 * scatter's expectation where the channel is noisy. Ten independent means of one steady value span
 * more than six of their standard deviations less than once in a thousand times (range of normal
 * samples, tables of the studentized range).
 */
public final class SettledSecond {
  /** Readings of 10 ms in the second. */
  public static final int READINGS = 100;

  private static final int BLOCKS = 10;
  private static final int PER_BLOCK = READINGS / BLOCKS;
  private static final double LEAST_SPAN_COUNTS = 1;
  private static final double SPAN_DEVIATIONS = 6;

  private final Deque<Reading> readings = new ArrayDeque<>();

  /**
   * One channel over the second.
   *
   * @param meanCounts mean
   * @param deviationCounts standard deviation of one conversion
   * @param meanDeviationCounts standard uncertainty of the mean: from the scatter of its ten parts,
   *     or from that of single conversions where it is larger
   * @param lowestCounts lowest conversion
   * @param highestCounts highest conversion
   * @param spanCounts highest less lowest of the ten means
   * @param still whether it held still
   */
  public record Mean(
      double meanCounts,
      double deviationCounts,
      double meanDeviationCounts,
      int lowestCounts,
      int highestCounts,
      double spanCounts,
      boolean still) {}

  /** Takes a reading; a gap before it restarts the second. */
  public void add(Reading reading) {
    if (!readings.isEmpty() && readings.peekLast().endMicros() != reading.startMicros()) {
      readings.clear();
    }
    readings.add(reading);
    if (readings.size() > READINGS) {
      readings.remove();
    }
  }

  /** Restarts. */
  public void clear() {
    readings.clear();
  }

  /** Whether a whole second is there. */
  public boolean full() {
    return readings.size() == READINGS;
  }

  /**
   * One channel.
   *
   * @throws IllegalStateException the second is not full
   */
  public Mean of(Channel channel) {
    if (!full()) {
      throw new IllegalStateException(readings.size() + " readings of " + READINGS);
    }
    double[] blocks = new double[BLOCKS];
    double squares = 0;
    int lowest = Integer.MAX_VALUE;
    int highest = 0;
    int at = 0;
    for (Reading reading : readings) {
      blocks[at++ / PER_BLOCK] += reading.meanCounts(channel) / PER_BLOCK;
      squares += reading.sumOfSquares(channel);
      lowest = Math.min(lowest, reading.lowest(channel));
      highest = Math.max(highest, reading.highest(channel));
    }
    double mean = 0;
    double least = Double.POSITIVE_INFINITY;
    double most = Double.NEGATIVE_INFINITY;
    for (double block : blocks) {
      mean += block / BLOCKS;
      least = Math.min(least, block);
      most = Math.max(most, block);
    }
    double scatter = 0;
    for (double block : blocks) {
      scatter += (block - mean) * (block - mean);
    }
    double n = (double) READINGS * channel.conversionsPerReading();
    double deviation = Math.sqrt(Math.max(0, (squares - n * mean * mean) / (n - 1)));
    double expected = deviation / Math.sqrt(n / BLOCKS);
    return new Mean(
        mean,
        deviation,
        Math.max(Math.sqrt(scatter / (BLOCKS - 1) / BLOCKS), deviation / Math.sqrt(n)),
        lowest,
        highest,
        most - least,
        most - least <= Math.max(LEAST_SPAN_COUNTS, SPAN_DEVIATIONS * expected));
  }
}
