package firstamp.log.code;

import firstamp.model.samples.Channel;
import firstamp.model.samples.SamplePlan;

/** Conversions in the order of the plan, and the values of each channel out of it. */
public final class Deinterleaver {
  /** Channels. */
  public static final int CHANNELS = Channel.values().length;

  private static final int SLOTS = SamplePlan.SLOTS;
  private static final int SLOT_BITS = Integer.numberOfTrailingZeros(SLOTS);
  private static final byte[] CHANNEL_AT = channels();
  private static final int[][] BEFORE = before();

  /** Plans that are put in order at a time: 0.2 s. */
  private static final int AT_HAND = 100;

  private Deinterleaver() {}

  /** Channel number of a conversion. */
  public static int channelAt(long index) {
    return CHANNEL_AT[(int) index & SLOTS - 1];
  }

  /** How many of these conversions are of the channel. */
  public static int count(int channel, long fromIndex, long toIndex) {
    return (int) (before(channel, toIndex) - before(channel, fromIndex));
  }

  private static long before(int channel, long index) {
    return (index >> SLOT_BITS) * BEFORE[channel][SLOTS] + BEFORE[channel][(int) index & SLOTS - 1];
  }

  /**
   * Puts conversions that follow each other to their channels.
   *
   * @param sizes how many values each channel has; is advanced
   */
  public static void split(
      short[] counts, int offset, long firstIndex, int length, int[][] values, int[] sizes) {
    long index = firstIndex;
    int k = offset;
    int end = offset + length;
    for (; k < end && (index & SLOTS - 1) != 0; k++, index++) {
      int channel = channelAt(index);
      values[channel][sizes[channel]++] = counts[k];
    }
    int plans = (end - k) / SLOTS;
    splitPlans(counts, k, plans, values, sizes);
    k += plans * SLOTS;
    for (int slot = 0; k < end; k++, slot++) {
      int channel = CHANNEL_AT[slot];
      values[channel][sizes[channel]++] = counts[k];
    }
  }

  /** Whole plans, some at a time so that they stay in the cache, channel by channel. */
  private static void splitPlans(
      short[] counts, int offset, int plans, int[][] values, int[] sizes) {
    for (int plan = 0; plan < plans; plan += AT_HAND) {
      int number = Math.min(AT_HAND, plans - plan);
      for (int channel = 0; channel < CHANNELS; channel++) {
        int from = offset + plan * SLOTS + SamplePlan.firstSlot(Channel.of(channel));
        int count = number * BEFORE[channel][SLOTS];
        int[] to = values[channel];
        // The compiler unrolls only a loop whose step it knows.
        switch (SamplePlan.step(Channel.of(channel))) {
          case 4 -> take(counts, from, 4, to, sizes[channel], count);
          case 16 -> take(counts, from, 16, to, sizes[channel], count);
          default -> take(counts, from, 32, to, sizes[channel], count);
        }
        sizes[channel] += count;
      }
    }
  }

  private static void take(short[] counts, int from, int step, int[] to, int place, int count) {
    for (int k = 0; k < count; k++) {
      to[place + k] = counts[from + step * k];
    }
  }

  /**
   * The reverse of {@link #split}.
   *
   * @param taken how many values of each channel were taken already; is advanced
   */
  public static void join(
      int[][] values, int[] taken, long firstIndex, short[] counts, int offset, int length) {
    long index = firstIndex;
    int k = offset;
    int end = offset + length;
    for (; k < end && (index & SLOTS - 1) != 0; k++, index++) {
      int channel = channelAt(index);
      counts[k] = (short) values[channel][taken[channel]++];
    }
    int plans = (end - k) / SLOTS;
    joinPlans(values, taken, counts, k, plans);
    k += plans * SLOTS;
    for (int slot = 0; k < end; k++, slot++) {
      int channel = CHANNEL_AT[slot];
      counts[k] = (short) values[channel][taken[channel]++];
    }
  }

  private static void joinPlans(
      int[][] values, int[] taken, short[] counts, int offset, int plans) {
    for (int plan = 0; plan < plans; plan += AT_HAND) {
      int number = Math.min(AT_HAND, plans - plan);
      for (int channel = 0; channel < CHANNELS; channel++) {
        int to = offset + plan * SLOTS + SamplePlan.firstSlot(Channel.of(channel));
        int count = number * BEFORE[channel][SLOTS];
        int[] from = values[channel];
        switch (SamplePlan.step(Channel.of(channel))) {
          case 4 -> put(from, taken[channel], counts, to, 4, count);
          case 16 -> put(from, taken[channel], counts, to, 16, count);
          default -> put(from, taken[channel], counts, to, 32, count);
        }
        taken[channel] += count;
      }
    }
  }

  private static void put(int[] from, int place, short[] counts, int to, int step, int count) {
    for (int k = 0; k < count; k++) {
      counts[to + step * k] = (short) from[place + k];
    }
  }

  private static byte[] channels() {
    byte[] channels = new byte[SLOTS];
    for (int slot = 0; slot < SLOTS; slot++) {
      channels[slot] = (byte) SamplePlan.channelAt(slot).ordinal();
    }
    return channels;
  }

  private static int[][] before() {
    int[][] before = new int[CHANNELS][SLOTS + 1];
    for (int slot = 0; slot < SLOTS; slot++) {
      for (int channel = 0; channel < CHANNELS; channel++) {
        before[channel][slot + 1] = before[channel][slot] + (CHANNEL_AT[slot] == channel ? 1 : 0);
      }
    }
    return before;
  }
}
