package firstamp.model;

import java.util.Arrays;
import java.util.function.Consumer;

/**
 * Turns consecutive conversions into readings, exactly as the probe does for its reduced stream.
 *
 * <p>After a gap it goes on at the next multiple of 160. Not thread-safe: one per stream.
 */
public final class ReadingReducer {
  private static final int CHANNELS = 8;
  private static final int PER_READING = SamplePlan.CONVERSIONS_PER_READING;
  private static final byte[] SLOT_CHANNEL = slotChannels();

  private final Consumer<Reading> sink;
  private final int[] sums = new int[CHANNELS];
  private final int[] lowest = new int[CHANNELS];
  private final int[] highest = new int[CHANNELS];
  private final long[] squares = new long[CHANNELS];
  private long nextIndex = Long.MIN_VALUE;
  private boolean collecting;

  /**
   * A reducer with nothing collected.
   *
   * @param sink called with each complete reading
   */
  public ReadingReducer(Consumer<Reading> sink) {
    this.sink = sink;
  }

  /**
   * Takes conversions.
   *
   * @param firstIndex index of the first; anything but the successor of the last one given is a gap
   * @param counts values 0 to 1023
   * @param offset of the first in {@code counts}
   * @param length how many
   */
  public void accept(long firstIndex, short[] counts, int offset, int length) {
    if (firstIndex != nextIndex) {
      collecting = false;
    }
    for (int k = 0; k < length; k++) {
      long index = firstIndex + k;
      int place = (int) Math.floorMod(index, (long) PER_READING);
      if (place == 0) {
        begin();
      }
      if (collecting) {
        add(SLOT_CHANNEL[place & (SamplePlan.SLOTS - 1)], counts[offset + k]);
        if (place == PER_READING - 1) {
          collecting = false;
          sink.accept(new Reading(index - (PER_READING - 1), sums, lowest, highest, squares));
        }
      }
    }
    nextIndex = firstIndex + length;
  }

  private void begin() {
    collecting = true;
    Arrays.fill(sums, 0);
    Arrays.fill(lowest, Integer.MAX_VALUE);
    Arrays.fill(highest, Integer.MIN_VALUE);
    Arrays.fill(squares, 0);
  }

  private void add(int channel, int count) {
    sums[channel] += count;
    squares[channel] += (long) count * count;
    lowest[channel] = Math.min(lowest[channel], count);
    highest[channel] = Math.max(highest[channel], count);
  }

  private static byte[] slotChannels() {
    byte[] channels = new byte[SamplePlan.SLOTS];
    for (int slot = 0; slot < channels.length; slot++) {
      channels[slot] = (byte) SamplePlan.channelAt(slot).ordinal();
    }
    return channels;
  }
}
