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
  private static final int A = PlanOrder.channelAt(0);
  private static final int B = PlanOrder.channelAt(1);
  private static final int C = PlanOrder.channelAt(2);

  private final long[] edges;
  // All channels of a column side by side: a column is filled at one go.
  private final int[] lowest;
  private final int[] highest;
  private final double[] sums;
  private final double[] weights;
  private final int[] low = new int[CHANNELS];
  private final int[] high = new int[CHANNELS];
  private final int[] sum = new int[CHANNELS];
  private final int[] number = new int[CHANNELS];

  Overview(long[] edges) {
    int columns = edges.length - 1;
    this.edges = edges;
    this.lowest = new int[columns * CHANNELS];
    this.highest = new int[columns * CHANNELS];
    this.sums = new double[columns * CHANNELS];
    this.weights = new double[columns * CHANNELS];
  }

  void add(int column, int channel, int low, int high, double sum, double weight) {
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

  /** Adds conversions that follow each other. */
  void add(int column, long firstIndex, short[] counts, int offset, int length) {
    java.util.Arrays.fill(low, Integer.MAX_VALUE);
    java.util.Arrays.fill(high, Integer.MIN_VALUE);
    java.util.Arrays.fill(sum, 0);
    java.util.Arrays.fill(number, 0);
    int k = 0;
    for (; k < length && (firstIndex + k & 3) != 0; k++) {
      one(PlanOrder.channelAt(firstIndex + k), counts[offset + k]);
    }
    k = fours(firstIndex, counts, offset, k, length);
    for (; k < length; k++) {
      one(PlanOrder.channelAt(firstIndex + k), counts[offset + k]);
    }
    for (int channel = 0; channel < CHANNELS; channel++) {
      if (number[channel] > 0) {
        add(column, channel, low[channel], high[channel], sum[channel], number[channel]);
      }
    }
  }

  private void one(int channel, int count) {
    low[channel] = Math.min(low[channel], count);
    high[channel] = Math.max(high[channel], count);
    sum[channel] += count;
    number[channel]++;
  }

  /** I, H and M come in every fourth conversion: without a look at the plan for each. */
  private int fours(long firstIndex, short[] counts, int offset, int from, int length) {
    int lowA = low[A];
    int lowB = low[B];
    int lowC = low[C];
    int highA = high[A];
    int highB = high[B];
    int highC = high[C];
    int sumA = 0;
    int sumB = 0;
    int sumC = 0;
    int k = from;
    for (; k + 4 <= length; k += 4) {
      int a = counts[offset + k];
      int b = counts[offset + k + 1];
      int c = counts[offset + k + 2];
      lowA = Math.min(lowA, a);
      lowB = Math.min(lowB, b);
      lowC = Math.min(lowC, c);
      highA = Math.max(highA, a);
      highB = Math.max(highB, b);
      highC = Math.max(highC, c);
      sumA += a;
      sumB += b;
      sumC += c;
      one(PlanOrder.channelAt(firstIndex + k + 3), counts[offset + k + 3]);
    }
    low[A] = lowA;
    low[B] = lowB;
    low[C] = lowC;
    high[A] = highA;
    high[B] = highB;
    high[C] = highC;
    sum[A] += sumA;
    sum[B] += sumB;
    sum[C] += sumC;
    int fours = (k - from) / 4;
    number[A] += fours;
    number[B] += fours;
    number[C] += fours;
    return k;
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
