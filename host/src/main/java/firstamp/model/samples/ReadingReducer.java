package firstamp.model.samples;

import java.util.function.Consumer;

/**
 * Turns consecutive conversions into readings, exactly as the probe does for its reduced stream.
 *
 * <p>After a gap it continues at the next multiple of 160. Not thread-safe: one per stream.
 */
public final class ReadingReducer {
  private static final int CHANNELS = Reading.CHANNELS;
  private static final int PER_READING = SamplePlan.CONVERSIONS_PER_READING;
  private final Consumer<Reading> sink;
  private final short[] held = new short[PER_READING];
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
    int place = (int) Math.floorMod(firstIndex, (long) PER_READING);
    int k = 0;
    while (k < length) {
      int run = Math.min(length - k, PER_READING - place);
      collecting |= place == 0;
      if (collecting) {
        System.arraycopy(counts, offset + k, held, place, run);
      }
      k += run;
      place += run;
      if (place == PER_READING) {
        place = 0;
        if (collecting) {
          collecting = false;
          sink.accept(reduced(firstIndex + k - PER_READING));
        }
      }
    }
    nextIndex = firstIndex + length;
  }

  private Reading reduced(long firstIndex) {
    int[] reduced = new int[3 * CHANNELS];
    long[] squares = new long[CHANNELS];
    for (int channel = 0; channel < CHANNELS; channel++) {
      int slot = SamplePlan.firstSlot(Channel.of(channel));
      // The compiler unrolls only a loop whose step it knows.
      switch (SamplePlan.step(Channel.of(channel))) {
        case 4 -> reduce(channel, slot, 4, reduced, squares);
        case 16 -> reduce(channel, slot, 16, reduced, squares);
        default -> reduce(channel, slot, 32, reduced, squares);
      }
    }
    return new Reading(firstIndex, reduced, squares);
  }

  /** The slots of a channel lie equally far apart. */
  private void reduce(int channel, int slot, int step, int[] reduced, long[] squares) {
    int sum = 0;
    int square = 0;
    int low = Integer.MAX_VALUE;
    int high = Integer.MIN_VALUE;
    for (int k = slot; k < PER_READING; k += step) {
      int count = held[k];
      sum += count;
      square += count * count;
      low = Math.min(low, count);
      high = Math.max(high, count);
    }
    reduced[channel] = sum;
    reduced[Reading.LOWEST + channel] = low;
    reduced[Reading.HIGHEST + channel] = high;
    squares[channel] = square;
  }
}
