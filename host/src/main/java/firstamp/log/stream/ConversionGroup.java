package firstamp.log.stream;

import firstamp.log.code.BankEncoder;
import firstamp.log.code.BankTrainer;
import firstamp.log.code.Bits;
import firstamp.log.code.Deinterleaver;
import firstamp.log.code.EncoderWorkspace;
import firstamp.log.code.MalformedChunkException;
import firstamp.log.code.MinMax;
import firstamp.log.code.PredictorBank;
import firstamp.log.code.ReferenceChannel;
import firstamp.log.code.SeriesCoder;
import firstamp.model.samples.Channel;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.IntFunction;

/** Conversions of a raw stream. */
public final class ConversionGroup implements StreamGroup {
  /** Bits of a conversion in the tail. */
  static final int TAIL_BITS = 10;

  private static final int HIGHEST = 1023;
  private static final int CHANNELS = Deinterleaver.CHANNELS;
  private static final int PER_PLAN = Channel.I.conversionsPerPlan();
  private static final int LIVE_TAPS = 4;
  private static final int REPACK_TAPS = 8;

  private final Stretches stretches = new Stretches();
  private short[] counts;
  private int length;

  /** A group with room for this many conversions at first. */
  public ConversionGroup(int room) {
    this.counts = new short[Math.max(4096, room)];
  }

  /** Takes {@code count} conversions; the stretch they belong to must have been added. */
  public void add(short[] from, int offset, int count) {
    if (length + count > counts.length) {
      counts = Arrays.copyOf(counts, Math.max(length + count, 2 * counts.length));
    }
    System.arraycopy(from, offset, counts, length, count);
    length += count;
  }

  public short[] counts() {
    return counts;
  }

  @Override
  public int length() {
    return length;
  }

  @Override
  public Stretches stretches() {
    return stretches;
  }

  @Override
  public void truncate(int to) {
    length = to;
    stretches.truncate(to);
  }

  @Override
  public byte[] packed(int from) {
    int[] values = new int[length - from];
    for (int k = 0; k < values.length; k++) {
      values[k] = counts[from + k];
    }
    byte[] data = new byte[Bits.bytes(values.length, TAIL_BITS)];
    Bits.pack(values, 0, values.length, 0, TAIL_BITS, data, 0);
    return data;
  }

  public static void checkRange(short[] counts) {
    int seen = 0;
    for (short count : counts) {
      seen |= count;
    }
    if ((seen & ~HIGHEST) == 0) {
      return;
    }
    for (short count : counts) {
      if (count < 0 || count > HIGHEST) {
        throw new IllegalArgumentException("conversion of " + count + " counts, allowed 0 to 1023");
      }
    }
  }

  public static short[] unpack(byte[] data, int count) throws MalformedChunkException {
    if (count < 0 || count > SeriesCoder.LONGEST || data.length != Bits.bytes(count, TAIL_BITS)) {
      throw new MalformedChunkException(data.length + " bytes for " + count + " conversions");
    }
    int[] values = new int[count];
    Bits.unpack(data, 0, count, 0, TAIL_BITS, values, 0);
    short[] counts = new short[count];
    for (int k = 0; k < count; k++) {
      counts[k] = (short) values[k];
    }
    return counts;
  }

  /**
   * The values of each channel.
   *
   * @param firsts conversion index of the first of each
   * @param whole whether no conversion is missing between them
   */
  record Channels(int[][] values, int[] sizes, long[] firsts, boolean whole) {}

  /** The values of each channel, in their order; they stay until the room is used again. */
  Channels split(EncoderWorkspace room) {
    int[][] values = new int[CHANNELS][];
    int[] sizes = new int[CHANNELS];
    long[] firsts = new long[CHANNELS];
    for (int channel = 0; channel < CHANNELS; channel++) {
      int size = 0;
      for (int s = 0; s < stretches.size(); s++) {
        long first = stretches.firstIndex(s);
        int length = stretches.end(s, this.length) - stretches.offset(s);
        int count = Deinterleaver.count(channel, first, first + length);
        if (size == 0 && count > 0) {
          firsts[channel] = first;
          while (Deinterleaver.channelAt(firsts[channel]) != channel) {
            firsts[channel]++;
          }
        }
        size += count;
      }
      values[channel] = room.values(channel, size);
    }
    for (int s = 0; s < stretches.size(); s++) {
      int offset = stretches.offset(s);
      int end = stretches.end(s, length);
      Deinterleaver.split(counts, offset, stretches.firstIndex(s), end - offset, values, sizes);
    }
    return new Channels(values, sizes, firsts, stretches.size() == 1);
  }

  @Override
  public Parts parts(EncoderWorkspace room) {
    Channels channels = split(room);
    Spans spans = Spans.of(stretches, length, channels);
    return new Parts(chunks(channels, spans::range, BankTrainer.Effort.LIVE, room.encoder), spans);
  }

  @Override
  public List<ChunkRow> repacked(EncoderWorkspace room) {
    Channels channels = split(room);
    return chunks(
        channels,
        channel -> MinMax.of(channels.values()[channel], channels.sizes()[channel]),
        BankTrainer.Effort.REPACK,
        room.encoder);
  }

  private static List<ChunkRow> chunks(
      Channels channels,
      IntFunction<MinMax> ranges,
      BankTrainer.Effort effort,
      BankEncoder encoder) {
    List<ChunkRow> chunks = new ArrayList<>();
    for (int channel = 0; channel < CHANNELS; channel++) {
      int size = channels.sizes()[channel];
      if (size > 0) {
        chunks.add(
            new ChunkRow(
                channel,
                size,
                channels.firsts()[channel],
                SeriesCoder.encode(
                    channels.values()[channel],
                    size,
                    ranges.apply(channel),
                    companion(channel, channels, effort),
                    effort,
                    encoder)));
      }
    }
    return chunks;
  }

  /** Meter from head, which hear the same; fine current from coarse, where there is time. */
  private static ReferenceChannel companion(
      int channel, Channels channels, BankTrainer.Effort effort) {
    int of = companionOf(channel);
    boolean live = effort == BankTrainer.Effort.LIVE;
    if (of < 0
        || !channels.whole()
        || channels.sizes()[of] == 0
        || live && channel == Channel.J.ordinal()) {
      return null;
    }
    int stride = channel == Channel.J.ordinal() ? PER_PLAN : 1;
    // The companion's value of the same place is the last one up to two slots later.
    int centre = Deinterleaver.count(of, channels.firsts()[of], channels.firsts()[channel] + 2) - 1;
    return ReferenceChannel.of(
        channels.values()[of],
        channels.sizes()[of],
        stride,
        centre,
        live ? LIVE_TAPS : stride > 1 ? PredictorBank.MOST_JOINT : REPACK_TAPS);
  }

  /** Number of the channel that this one may be predicted from; -1 = none. It comes before. */
  public static int companionOf(int channel) {
    if (channel == Channel.M.ordinal()) {
      return Channel.H.ordinal();
    }
    return channel == Channel.J.ordinal() ? Channel.I.ordinal() : -1;
  }
}
