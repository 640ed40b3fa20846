package firstamp.log.stream;

import firstamp.log.code.Deinterleaver;
import firstamp.log.code.MinMax;
import firstamp.model.samples.Channel;
import firstamp.model.samples.Reading;
import firstamp.model.samples.SamplePlan;
import java.util.Arrays;
import java.util.List;

/**
 * Lowest, highest and mean of every channel over consecutive buckets of equal span; a bucket may be
 * empty for a channel.
 */
public final class Spans {
  /** Conversions in a bucket of each level: 100 ms, 1 s, 10 s. */
  public static final int[] LEVELS = {1600, 16_000, 160_000};

  /** No row has more buckets. */
  static final int MOST_BUCKETS = 1 << 16;

  private static final int CHANNELS = Channel.values().length;

  public final int span;
  public final long firstBucket;
  public final int buckets;
  public final int[][] lowest;
  public final int[][] highest;
  public final long[][] sums;
  public final int[][] counts;

  public Spans(int span, long firstBucket, int buckets) {
    this.span = span;
    this.firstBucket = firstBucket;
    this.buckets = buckets;
    this.lowest = new int[CHANNELS][buckets];
    this.highest = new int[CHANNELS][buckets];
    this.sums = new long[CHANNELS][buckets];
    this.counts = new int[CHANNELS][buckets];
    for (int channel = 0; channel < CHANNELS; channel++) {
      Arrays.fill(lowest[channel], Integer.MAX_VALUE);
      Arrays.fill(highest[channel], Integer.MIN_VALUE);
    }
  }

  /** Buckets of the finest level for conversions whose index only goes forward. */
  static Spans of(Stretches stretches, int length, ConversionGroup.Channels channels) {
    int last = stretches.size() - 1;
    long end = stretches.firstIndex(last) + (length - stretches.offset(last));
    Spans spans = between(stretches.firstIndex(0), end);
    int[] taken = new int[CHANNELS];
    for (int s = 0; s <= last; s++) {
      long index = stretches.firstIndex(s);
      long stop = index + stretches.end(s, length) - stretches.offset(s);
      while (index < stop) {
        long edge = Math.min(stop, (Math.floorDiv(index, (long) spans.span) + 1) * spans.span);
        int bucket = (int) (Math.floorDiv(index, (long) spans.span) - spans.firstBucket);
        for (int channel = 0; channel < CHANNELS; channel++) {
          int count = Deinterleaver.count(channel, index, edge);
          spans.add(channel, bucket, channels.values()[channel], taken[channel], count);
          taken[channel] += count;
        }
        index = edge;
      }
    }
    return spans;
  }

  /** The same for readings. */
  static Spans of(List<Reading> readings) {
    long last = readings.get(readings.size() - 1).firstIndex();
    Spans spans = between(readings.get(0).firstIndex(), last + SamplePlan.CONVERSIONS_PER_READING);
    for (Reading reading : readings) {
      spans.add(reading);
    }
    return spans;
  }

  private static Spans between(long fromIndex, long toIndex) {
    int span = LEVELS[0];
    long first = Math.floorDiv(fromIndex, (long) span);
    return new Spans(span, first, (int) (Math.floorDiv(toIndex - 1, (long) span) - first + 1));
  }

  /** Buckets that each hold several of these. */
  public Spans coarser(int wider) {
    int ratio = wider / span;
    long first = Math.floorDiv(firstBucket, (long) ratio);
    long last = Math.floorDiv(firstBucket + buckets - 1, (long) ratio);
    Spans spans = new Spans(wider, first, (int) (last - first + 1));
    for (int channel = 0; channel < CHANNELS; channel++) {
      for (int b = 0; b < buckets; b++) {
        spans.add(
            channel,
            (int) (Math.floorDiv(firstBucket + b, (long) ratio) - first),
            lowest[channel][b],
            highest[channel][b],
            sums[channel][b],
            counts[channel][b]);
      }
    }
    return spans;
  }

  private void add(int channel, int bucket, int[] values, int offset, int count) {
    int low = Integer.MAX_VALUE;
    int high = Integer.MIN_VALUE;
    int sum = 0;
    for (int k = offset; k < offset + count; k++) {
      int value = values[k];
      if (value < low) {
        low = value;
      }
      if (value > high) {
        high = value;
      }
      sum += value;
    }
    add(channel, bucket, low, high, sum, count);
  }

  private void add(Reading reading) {
    int bucket = (int) (Math.floorDiv(reading.firstIndex(), (long) span) - firstBucket);
    for (Channel channel : Channel.values()) {
      add(
          channel.ordinal(),
          bucket,
          reading.lowest(channel),
          reading.highest(channel),
          reading.sum(channel),
          channel.conversionsPerReading());
    }
  }

  void add(int channel, int bucket, int low, int high, long sum, int count) {
    lowest[channel][bucket] = Math.min(lowest[channel][bucket], low);
    highest[channel][bucket] = Math.max(highest[channel][bucket], high);
    sums[channel][bucket] += sum;
    counts[channel][bucket] += count;
  }

  /** Lowest and highest of all buckets of a channel; 0 and 0 where it has nothing. */
  MinMax range(int channel) {
    int low = Integer.MAX_VALUE;
    int high = Integer.MIN_VALUE;
    for (int b = 0; b < buckets; b++) {
      low = Math.min(low, lowest[channel][b]);
      high = Math.max(high, highest[channel][b]);
    }
    return low > high ? new MinMax(0, 0) : new MinMax(low, high);
  }

  /** Takes over the buckets of another one that lies within. */
  public void take(Spans part) {
    int offset = (int) (part.firstBucket - firstBucket);
    for (int channel = 0; channel < CHANNELS; channel++) {
      System.arraycopy(part.lowest[channel], 0, lowest[channel], offset, part.buckets);
      System.arraycopy(part.highest[channel], 0, highest[channel], offset, part.buckets);
      System.arraycopy(part.sums[channel], 0, sums[channel], offset, part.buckets);
      System.arraycopy(part.counts[channel], 0, counts[channel], offset, part.buckets);
    }
  }

  /** Mean in 1/16 count, rounded. */
  int mean16(int channel, int bucket) {
    int n = counts[channel][bucket];
    return (int) Math.floorDiv(32 * sums[channel][bucket] + n, 2L * n);
  }
}
