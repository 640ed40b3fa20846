package firstamp.log.stream;

import firstamp.log.code.BankTrainer;
import firstamp.log.code.Bits;
import firstamp.log.code.MalformedChunkException;
import firstamp.log.code.SeriesCoder;
import firstamp.model.samples.Channel;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;

/**
 * Buckets to the bytes of a level row and back, three series per channel: in joined rows mean,
 * lowest below it (-1 = empty), highest above it; in others lowest, highest above it (-1 = empty),
 * mean above it.
 */
public final class SpanCodec {
  /** Plain series one after another. */
  public static final int PLAIN = SeriesCoder.PLAIN;

  /** Series of any version, each with version (1 byte) and length (4); no longer written. */
  static final int CODED = 16;

  /**
   * The same from the mean on: it hardly moves where lowest and highest do, and these lie about as
   * far from it on both sides.
   */
  public static final int FROM_MEAN = 17;

  private static final int CHANNELS = Channel.values().length;
  private static final int SERIES = 3 * CHANNELS;

  private SpanCodec() {}

  public static SeriesCoder.Coded pack(Spans spans, int version) {
    int[][] series = version == FROM_MEAN ? fromMean(spans) : fromLowest(spans);
    SeriesCoder.Coded[] parts = new SeriesCoder.Coded[SERIES];
    int bytes = 0;
    for (int s = 0; s < SERIES; s++) {
      parts[s] =
          version == PLAIN
              ? new SeriesCoder.Coded(PLAIN, SeriesCoder.plain(series[s], spans.buckets))
              : SeriesCoder.encode(series[s], spans.buckets, null, BankTrainer.Effort.SHORT);
      bytes += 5 + parts[s].data().length;
    }
    ByteBuffer out = ByteBuffer.allocate(bytes).order(ByteOrder.LITTLE_ENDIAN);
    for (SeriesCoder.Coded part : parts) {
      if (version != PLAIN) {
        out.put((byte) part.version()).putInt(part.data().length);
      }
      out.put(part.data());
    }
    return new SeriesCoder.Coded(version, java.util.Arrays.copyOf(out.array(), out.position()));
  }

  private static int[][] fromMean(Spans spans) {
    int[][] series = new int[SERIES][spans.buckets];
    for (int channel = 0; channel < CHANNELS; channel++) {
      int mean = 0;
      for (int b = 0; b < spans.buckets; b++) {
        boolean empty = spans.counts[channel][b] == 0;
        mean = empty ? mean : spans.mean16(channel, b);
        int below = empty ? -1 : (mean >> 4) - spans.lowest[channel][b];
        series[3 * channel][b] = mean;
        series[3 * channel + 1][b] = below;
        series[3 * channel + 2][b] = empty ? 0 : spans.highest[channel][b] - (mean >> 4) - below;
      }
    }
    return series;
  }

  private static int[][] fromLowest(Spans spans) {
    int[][] series = new int[SERIES][spans.buckets];
    for (int channel = 0; channel < CHANNELS; channel++) {
      int before = 0;
      for (int b = 0; b < spans.buckets; b++) {
        boolean empty = spans.counts[channel][b] == 0;
        before = empty ? before : spans.lowest[channel][b];
        series[3 * channel][b] = before;
        series[3 * channel + 1][b] = empty ? -1 : spans.highest[channel][b] - before;
        series[3 * channel + 2][b] = empty ? 0 : spans.mean16(channel, b) - 16 * before;
      }
    }
    return series;
  }

  /** Buckets from their row; a mean counts as a sum of 16 sixteenths. */
  public static Spans unpack(int span, long firstBucket, int buckets, int version, byte[] data)
      throws MalformedChunkException {
    if (buckets < 1 || buckets > Spans.MOST_BUCKETS) {
      throw new MalformedChunkException(buckets + " buckets");
    }
    if (version != PLAIN && version != CODED && version != FROM_MEAN) {
      throw new MalformedChunkException("level row of version " + version);
    }
    ByteBuffer in = ByteBuffer.wrap(data).order(ByteOrder.LITTLE_ENDIAN);
    Spans spans = new Spans(span, firstBucket, buckets);
    for (int channel = 0; channel < CHANNELS; channel++) {
      int[] first = series(in, version, buckets);
      int[] second = series(in, version, buckets);
      int[] third = series(in, version, buckets);
      for (int b = 0; b < buckets; b++) {
        if (second[b] < 0) {
          continue;
        }
        if (version == FROM_MEAN) {
          int middle = first[b] >> 4;
          spans.add(channel, b, middle - second[b], middle + second[b] + third[b], first[b], 16);
        } else {
          spans.add(channel, b, first[b], first[b] + second[b], third[b] + 16L * first[b], 16);
        }
      }
    }
    return spans;
  }

  private static int[] series(ByteBuffer in, int version, int buckets)
      throws MalformedChunkException {
    if (in.remaining() < 5) {
      throw new MalformedChunkException("level row ends too early");
    }
    int coded = version == PLAIN ? PLAIN : in.get() & 0xff;
    int length = version == PLAIN ? plainBytes(in, buckets) : in.getInt();
    if (length < 0 || length > in.remaining()) {
      throw new MalformedChunkException("a series of a level row ends too early");
    }
    byte[] part = new byte[length];
    in.get(part);
    return SeriesCoder.decode(coded, part, buckets);
  }

  private static int plainBytes(ByteBuffer in, int buckets) {
    int width = in.get(in.position() + 4);
    return width < 0 || width > 32 ? -1 : 5 + Bits.bytes(buckets, width);
  }
}
