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
  private static final int[] FIRST_SLOT = firstSlots();
  private static final int[] STEP = steps();

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
    int place = (int) Math.floorMod(firstIndex, (long) PER_READING);
    int k = 0;
    while (k < length) {
      int run = Math.min(length - k, PER_READING - place);
      if (place == 0) {
        begin();
      }
      if (collecting) {
        add(place, counts, offset + k, run);
      }
      k += run;
      place += run;
      if (place == PER_READING) {
        place = 0;
        if (collecting) {
          collecting = false;
          long begin = firstIndex + k - PER_READING;
          sink.accept(new Reading(begin, sums, lowest, highest, squares));
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

  /** Channel by channel: the slots of each lie equally far apart. */
  private void add(int place, short[] counts, int offset, int run) {
    for (int channel = 0; channel < CHANNELS; channel++) {
      int step = STEP[channel];
      int sum = 0;
      int square = 0;
      int low = lowest[channel];
      int high = highest[channel];
      for (int k = FIRST_SLOT[channel] - place & step - 1; k < run; k += step) {
        int count = counts[offset + k];
        sum += count;
        square += count * count;
        low = Math.min(low, count);
        high = Math.max(high, count);
      }
      sums[channel] += sum;
      squares[channel] += square;
      lowest[channel] = low;
      highest[channel] = high;
    }
  }

  private static int[] firstSlots() {
    int[] first = new int[CHANNELS];
    for (int slot = SamplePlan.SLOTS - 1; slot >= 0; slot--) {
      first[SamplePlan.channelAt(slot).ordinal()] = slot;
    }
    return first;
  }

  private static int[] steps() {
    int[] steps = new int[CHANNELS];
    for (int channel = 0; channel < CHANNELS; channel++) {
      steps[channel] = SamplePlan.SLOTS / Channel.of(channel).conversionsPerPlan();
    }
    return steps;
  }
}
