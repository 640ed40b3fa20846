package firstamp.log;

import firstamp.model.Channel;

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
  private final int[][] lowest;
  private final int[][] highest;
  private final double[][] sums;
  private final double[][] weights;

  Overview(long[] edges) {
    int columns = edges.length - 1;
    this.edges = edges;
    this.lowest = new int[CHANNELS][columns];
    this.highest = new int[CHANNELS][columns];
    this.sums = new double[CHANNELS][columns];
    this.weights = new double[CHANNELS][columns];
  }

  void add(int column, int channel, int low, int high, double sum, double weight) {
    if (weights[channel][column] == 0) {
      lowest[channel][column] = low;
      highest[channel][column] = high;
    } else {
      lowest[channel][column] = Math.min(lowest[channel][column], low);
      highest[channel][column] = Math.max(highest[channel][column], high);
    }
    sums[channel][column] += sum;
    weights[channel][column] += weight;
  }

  /** Adds conversions that follow each other. */
  void add(int column, long firstIndex, short[] counts, int offset, int length) {
    int[] low = new int[CHANNELS];
    int[] high = new int[CHANNELS];
    int[] sum = new int[CHANNELS];
    int[] number = new int[CHANNELS];
    java.util.Arrays.fill(low, Integer.MAX_VALUE);
    for (int k = 0; k < length; k++) {
      int channel = PlanOrder.channelAt(firstIndex + k);
      int count = counts[offset + k];
      low[channel] = Math.min(low[channel], count);
      high[channel] = Math.max(high[channel], count);
      sum[channel] += count;
      number[channel]++;
    }
    for (int channel = 0; channel < CHANNELS; channel++) {
      if (number[channel] > 0) {
        add(column, channel, low[channel], high[channel], sum[channel], number[channel]);
      }
    }
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
    return weights[channel.ordinal()][column] == 0;
  }

  /** Lowest count; meaningless in an empty column. */
  public int lowest(Channel channel, int column) {
    return lowest[channel.ordinal()][column];
  }

  /** Highest count; meaningless in an empty column. */
  public int highest(Channel channel, int column) {
    return highest[channel.ordinal()][column];
  }

  /** Mean, counts; meaningless in an empty column. */
  public double mean(Channel channel, int column) {
    return sums[channel.ordinal()][column] / weights[channel.ordinal()][column];
  }
}
