package firstamp.log;

import firstamp.model.Channel;
import firstamp.model.Reading;
import firstamp.model.SamplePlan;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Arrays;

/**
 * Lowest, highest and mean of every channel over consecutive buckets of equal span; a bucket may be
 * empty for a channel.
 */
final class Spans {
  /** Conversions in a bucket of each level: 100 ms, 1 s, 10 s. */
  static final int[] LEVELS = {1600, 16_000, 160_000};

  /** No row has more buckets. */
  static final int MOST_BUCKETS = 1 << 16;

  private static final int CHANNELS = Channel.values().length;
  private static final int SERIES = 3 * CHANNELS;

  final int span;
  final long firstBucket;
  final int buckets;
  final int[][] lowest;
  final int[][] highest;
  final long[][] sums;
  final int[][] counts;

  Spans(int span, long firstBucket, int buckets) {
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

  /** Buckets of a level for everything in a group whose index only goes forward. */
  static Spans of(StreamGroup group, int span) {
    Stretches stretches = group.stretches();
    int last = stretches.size() - 1;
    long first = Math.floorDiv(stretches.firstIndex(0), (long) span);
    long step = group instanceof ConversionGroup ? 1 : SamplePlan.CONVERSIONS_PER_READING;
    long end = stretches.firstIndex(last) + (group.length() - stretches.offset(last)) * step - 1;
    Spans spans = new Spans(span, first, (int) (Math.floorDiv(end, (long) span) - first + 1));
    for (int s = 0; s <= last; s++) {
      long index = stretches.firstIndex(s);
      for (int k = stretches.offset(s); k < stretches.end(s, group.length()); k++) {
        if (group instanceof ConversionGroup conversions) {
          spans.add(index, conversions.counts()[k]);
        } else if (group instanceof ReadingGroup readings) {
          spans.add(readings.get(k));
        }
        index += step;
      }
    }
    return spans;
  }

  void add(long index, int value) {
    int channel = ConversionGroup.SLOT_CHANNEL[(int) index & SamplePlan.SLOTS - 1];
    add(channel, (int) (Math.floorDiv(index, (long) span) - firstBucket), value, value, value, 1);
  }

  void add(Reading reading) {
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

  /** Mean in 1/16 count, rounded. */
  int mean16(int channel, int bucket) {
    int n = counts[channel][bucket];
    return (int) Math.floorDiv(32 * sums[channel][bucket] + n, 2L * n);
  }

  /** Three plain series per channel: lowest, highest above it (-1 = empty), mean above it. */
  byte[] pack() {
    byte[][] parts = new byte[SERIES][];
    int bytes = 0;
    for (int channel = 0; channel < CHANNELS; channel++) {
      int[] low = new int[buckets];
      int[] high = new int[buckets];
      int[] mean = new int[buckets];
      int before = 0;
      for (int b = 0; b < buckets; b++) {
        boolean empty = counts[channel][b] == 0;
        before = empty ? before : lowest[channel][b];
        low[b] = before;
        high[b] = empty ? -1 : highest[channel][b] - before;
        mean[b] = empty ? 0 : mean16(channel, b) - 16 * before;
      }
      parts[3 * channel] = SeriesCoder.plain(low, buckets);
      parts[3 * channel + 1] = SeriesCoder.plain(high, buckets);
      parts[3 * channel + 2] = SeriesCoder.plain(mean, buckets);
    }
    for (byte[] part : parts) {
      bytes += part.length;
    }
    ByteBuffer out = ByteBuffer.allocate(bytes);
    for (byte[] part : parts) {
      out.put(part);
    }
    return out.array();
  }

  /** Buckets from their row; a mean counts as a sum of 16 sixteenths. */
  static Spans unpack(int span, long firstBucket, int buckets, byte[] data)
      throws MalformedChunkException {
    if (buckets < 1 || buckets > MOST_BUCKETS) {
      throw new MalformedChunkException(buckets + " buckets");
    }
    ByteBuffer in = ByteBuffer.wrap(data).order(ByteOrder.LITTLE_ENDIAN);
    Spans spans = new Spans(span, firstBucket, buckets);
    int[][] series = new int[SERIES][];
    for (int s = 0; s < SERIES; s++) {
      if (in.remaining() < 5) {
        throw new MalformedChunkException("level row ends before series " + s);
      }
      int width = data[in.position() + 4];
      int length = width < 0 || width > 32 ? -1 : 5 + Bits.bytes(buckets, width);
      if (length < 0 || length > in.remaining()) {
        throw new MalformedChunkException("series " + s + " of a level row ends too early");
      }
      byte[] part = new byte[length];
      in.get(part);
      series[s] = SeriesCoder.decode(SeriesCoder.PLAIN, part, buckets);
    }
    for (int channel = 0; channel < CHANNELS; channel++) {
      for (int b = 0; b < buckets; b++) {
        int low = series[3 * channel][b];
        int high = series[3 * channel + 1][b];
        if (high >= 0) {
          spans.add(channel, b, low, low + high, series[3 * channel + 2][b] + 16L * low, 16);
        }
      }
    }
    return spans;
  }
}
