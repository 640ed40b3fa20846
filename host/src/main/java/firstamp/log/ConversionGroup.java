package firstamp.log;

import firstamp.model.Channel;
import firstamp.model.SamplePlan;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Conversions of a raw stream. */
final class ConversionGroup implements StreamGroup {
  /** Bits of a conversion in the tail. */
  static final int TAIL_BITS = 10;

  private static final int HIGHEST = 1023;
  private static final int CHANNELS = Channel.values().length;
  static final byte[] SLOT_CHANNEL = slotChannels();

  private final Stretches stretches = new Stretches();
  private short[] counts = new short[4096];
  private int length;

  /** Takes {@code count} conversions; the stretch they belong to must have been added. */
  void add(short[] from, int offset, int count) {
    if (length + count > counts.length) {
      counts = Arrays.copyOf(counts, Math.max(length + count, 2 * counts.length));
    }
    System.arraycopy(from, offset, counts, length, count);
    length += count;
  }

  short[] counts() {
    return counts;
  }

  @Override
  public int length() {
    return length;
  }

  @Override
  public long conversions() {
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

  static void checkRange(short[] counts) {
    for (short count : counts) {
      if (count < 0 || count > HIGHEST) {
        throw new IllegalArgumentException("conversion of " + count + " counts, allowed 0 to 1023");
      }
    }
  }

  static short[] unpack(byte[] data, int count) throws MalformedChunkException {
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

  @Override
  public List<ChunkRow> chunks() {
    return chunks(LinearCoder.Strength.LIVE);
  }

  /** The same, smaller and slower: the meter predicted from the head where that pays. */
  List<ChunkRow> repacked() {
    return chunks(LinearCoder.Strength.REPACK);
  }

  private List<ChunkRow> chunks(LinearCoder.Strength strength) {
    int[][] values = new int[CHANNELS][];
    int[] sizes = new int[CHANNELS];
    long[] firsts = new long[CHANNELS];
    split(values, sizes, firsts);
    List<ChunkRow> chunks = new ArrayList<>();
    for (int channel = 0; channel < CHANNELS; channel++) {
      if (sizes[channel] > 0) {
        chunks.add(
            new ChunkRow(
                channel,
                sizes[channel],
                firsts[channel],
                strength == LinearCoder.Strength.LIVE
                    ? SeriesCoder.encode(values[channel], sizes[channel])
                    : smallest(channel, values, sizes)));
      }
    }
    return chunks;
  }

  private SeriesCoder.Coded smallest(int channel, int[][] values, int[] sizes) {
    SeriesCoder.Coded alone =
        SeriesCoder.encode(values[channel], sizes[channel], null, LinearCoder.Strength.REPACK);
    int head = Channel.H.ordinal();
    if (channel != Channel.M.ordinal() || sizes[head] != sizes[channel] || stretches.size() != 1) {
      return alone;
    }
    SeriesCoder.Coded joint =
        SeriesCoder.encode(
            values[channel],
            sizes[channel],
            Arrays.copyOf(values[head], sizes[head]),
            LinearCoder.Strength.REPACK);
    return joint.data().length < alone.data().length ? joint : alone;
  }

  /** Values of each channel, in their order. */
  void split(int[][] values, int[] sizes, long[] firsts) {
    for (int channel = 0; channel < CHANNELS; channel++) {
      values[channel] = new int[length];
    }
    for (int s = 0; s < stretches.size(); s++) {
      long index = stretches.firstIndex(s);
      int end = stretches.end(s, length);
      for (int k = stretches.offset(s); k < end; k++, index++) {
        int channel = SLOT_CHANNEL[(int) index & SamplePlan.SLOTS - 1];
        if (sizes[channel] == 0) {
          firsts[channel] = index;
        }
        values[channel][sizes[channel]++] = counts[k];
      }
    }
  }

  /** Puts the series of the channels together again; the reverse of {@link #split}. */
  static short[] join(int[][] values, Stretches stretches, int length)
      throws MalformedChunkException {
    short[] counts = new short[length];
    int[] taken = new int[CHANNELS];
    for (int s = 0; s < stretches.size(); s++) {
      long index = stretches.firstIndex(s);
      int end = stretches.end(s, length);
      for (int k = stretches.offset(s); k < end; k++, index++) {
        int channel = SLOT_CHANNEL[(int) index & SamplePlan.SLOTS - 1];
        if (taken[channel] == values[channel].length) {
          throw new MalformedChunkException(
              "channel " + Channel.of(channel) + " has " + taken[channel] + " values, too few");
        }
        int value = values[channel][taken[channel]++];
        if (value < 0 || value > HIGHEST) {
          throw new MalformedChunkException("conversion of " + value + " counts");
        }
        counts[k] = (short) value;
      }
    }
    return counts;
  }

  private static byte[] slotChannels() {
    byte[] channels = new byte[SamplePlan.SLOTS];
    for (int slot = 0; slot < channels.length; slot++) {
      channels[slot] = (byte) SamplePlan.channelAt(slot).ordinal();
    }
    return channels;
  }
}
