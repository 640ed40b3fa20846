package firstamp.log.stream;

import firstamp.model.samples.Channel;

/**
 * A span of a power-up in columns: lowest, highest and mean of each channel, in counts.
 *
 * <p>Lowest and highest are exact between the column's edges; the edges lie at most a quarter
 * column from where equal division would put them. A mean is that of the buckets' means, each
 * rounded to 1/16 count. A column in which a channel has nothing is empty.
 */
public final class Overview {
  private static final int CHANNELS = Channel.values().length;

  private final long[] edges;
  // All channels of a column side by side: a column is filled in one pass.
  private final int[] lowest;
  private final int[] highest;
  private final double[] sums;
  private final double[] weights;

  public Overview(long[] edges) {
    int columns = edges.length - 1;
    this.edges = edges;
    this.lowest = new int[columns * CHANNELS];
    this.highest = new int[columns * CHANNELS];
    this.sums = new double[columns * CHANNELS];
    this.weights = new double[columns * CHANNELS];
  }

  public void add(int column, int channel, int low, int high, double sum, double weight) {
    int at = column * CHANNELS + channel;
    if (weights[at] == 0) {
      lowest[at] = low;
      highest[at] = high;
    } else {
      lowest[at] = Math.min(lowest[at], low);
      highest[at] = Math.max(highest[at], high);
    }
    sums[at] += sum;
    weights[at] += weight;
  }

  private static int at(Channel channel, int column) {
    return column * CHANNELS + channel.ordinal();
  }

  /** Adds values of a channel that follow each other. */
  public void add(int column, int channel, int[] values, int from, int count) {
    if (count == 0) {
      return;
    }
    int low = values[from];
    int high = low;
    int sum = low;
    for (int k = from + 1; k < from + count; k++) {
      int value = values[k];
      low = Math.min(low, value);
      high = Math.max(high, value);
      sum += value;
    }
    add(column, channel, low, high, sum, count);
  }

  /** Columns. */
  public int columns() {
    return edges.length - 1;
  }

  /** Conversion index at which a column begins; the one after the last column ends the picture. */
  public long edge(int column) {
    return edges[column];
  }

  /** Whether the channel has nothing in the column. */
  public boolean empty(Channel channel, int column) {
    return weights[at(channel, column)] == 0;
  }

  /** Lowest count; meaningless in an empty column. */
  public int lowest(Channel channel, int column) {
    return lowest[at(channel, column)];
  }

  /** Highest count; meaningless in an empty column. */
  public int highest(Channel channel, int column) {
    return highest[at(channel, column)];
  }

  /** Mean, counts; meaningless in an empty column. */
  public double mean(Channel channel, int column) {
    return sums[at(channel, column)] / weights[at(channel, column)];
  }
}
