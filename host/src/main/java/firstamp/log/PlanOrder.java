package firstamp.log;

import firstamp.model.Channel;
import firstamp.model.SamplePlan;

/** Conversions in the order of the plan, and the values of each channel out of it. */
final class PlanOrder {
  /** Channels. */
  static final int CHANNELS = Channel.values().length;

  private static final int SLOTS = SamplePlan.SLOTS;
  private static final int SLOT_BITS = Integer.numberOfTrailingZeros(SLOTS);
  private static final byte[] CHANNEL_AT = channels();
  private static final int[][] BEFORE = before();

  private static final int I = Channel.I.ordinal();
  private static final int H = Channel.H.ordinal();
  private static final int M = Channel.M.ordinal();

  private PlanOrder() {}

  /** Channel number of a conversion. */
  static int channelAt(long index) {
    return CHANNEL_AT[(int) index & SLOTS - 1];
  }

  /** How many of these conversions are of the channel. */
  static int count(int channel, long fromIndex, long toIndex) {
    return (int) (before(channel, toIndex) - before(channel, fromIndex));
  }

  private static long before(int channel, long index) {
    return (index >> SLOT_BITS) * BEFORE[channel][SLOTS] + BEFORE[channel][(int) index & SLOTS - 1];
  }

  /**
   * Puts conversions that follow each other to their channels.
   *
   * @param sizes how many values each channel has; goes on
   */
  static void split(
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

  /** Whole plans: every fourth conversion is of I, of H and of M. */
  private static void splitPlans(
      short[] counts, int offset, int plans, int[][] values, int[] sizes) {
    int[] i = values[I];
    int[] h = values[H];
    int[] m = values[M];
    int atI = sizes[I];
    int atH = sizes[H];
    int atM = sizes[M];
    int slot = 3;
    for (int k = offset; k < offset + plans * SLOTS; k += 4) {
      int channel = CHANNEL_AT[slot];
      slot = slot + 4 & SLOTS - 1;
      i[atI++] = counts[k];
      h[atH++] = counts[k + 1];
      m[atM++] = counts[k + 2];
      values[channel][sizes[channel]++] = counts[k + 3];
    }
    sizes[I] = atI;
    sizes[H] = atH;
    sizes[M] = atM;
  }

  /**
   * The reverse of {@link #split}.
   *
   * @param taken how many values of each channel are gone already; goes on
   */
  static void join(
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

  /** Whole plans: every fourth conversion is of I, of H and of M. */
  private static void joinPlans(
      int[][] values, int[] taken, short[] counts, int offset, int plans) {
    int[] i = values[I];
    int[] h = values[H];
    int[] m = values[M];
    int atI = taken[I];
    int atH = taken[H];
    int atM = taken[M];
    int slot = 3;
    for (int k = offset; k < offset + plans * SLOTS; k += 4) {
      int channel = CHANNEL_AT[slot];
      slot = slot + 4 & SLOTS - 1;
      counts[k] = (short) i[atI++];
      counts[k + 1] = (short) h[atH++];
      counts[k + 2] = (short) m[atM++];
      counts[k + 3] = (short) values[channel][taken[channel]++];
    }
    taken[I] = atI;
    taken[H] = atH;
    taken[M] = atM;
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
