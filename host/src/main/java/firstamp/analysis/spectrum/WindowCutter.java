package firstamp.analysis.spectrum;

/**
 * Cuts the stream into windows of 200 ms that begin at conversions whose index is a multiple of
 * 3200, the same for every meter.
 *
 * <p>A window with a gap in it is never completed; the next one begins at its own place. Not
 * thread-safe.
 */
final class WindowCutter {
  /** Conversions of all channels in a window. */
  static final int CONVERSIONS = 3200;

  private final Windows windows;
  private long nextIndex = Long.MIN_VALUE;
  private int place = -1;

  WindowCutter(Windows windows) {
    this.windows = windows;
  }

  /** What is done with the pieces. */
  interface Windows {
    /**
     * A piece of the window under way.
     *
     * @param place of its first conversion in the window
     * @param counts array that holds it
     * @param offset where it starts there
     * @param run how many
     */
    void collect(int place, short[] counts, int offset, int run);

    /** The window is whole. */
    void complete(long firstIndex);
  }

  /**
   * Takes conversions out of a larger array; anything but the successor of the last one is a gap.
   *
   * @param firstIndex index of the first
   * @param counts values 0 to 1023
   * @param offset of the first in {@code counts}
   * @param length how many
   */
  void accept(long firstIndex, short[] counts, int offset, int length) {
    if (firstIndex != nextIndex) {
      place = -1;
    }
    nextIndex = firstIndex + length;
    int k = 0;
    if (place < 0) {
      long ahead = Math.floorMod(-firstIndex, (long) CONVERSIONS);
      if (ahead >= length) {
        return;
      }
      k = (int) ahead;
      place = 0;
    }
    while (k < length) {
      int run = Math.min(length - k, CONVERSIONS - place);
      windows.collect(place, counts, offset + k, run);
      k += run;
      place += run;
      if (place == CONVERSIONS) {
        place = 0;
        windows.complete(firstIndex + k - CONVERSIONS);
      }
    }
  }
}
