package firstamp.analysis.figures;

import java.util.Arrays;

/**
 * When a rail was last seen at each of its possible readings.
 *
 * <p>A reading of a rail is a sum of ten conversions, 0 to 10 230. The end of the last reading of
 * each sum is all that is needed to say, once the final value is known, when the rail was last
 * outside any band about it: exact for a power-up of any length, in constant memory. Not
 * thread-safe.
 */
final class SettleTimes {
  private static final int SUMS = 10 * 1023 + 1;
  private static final int NEVER = -1;

  /** It has to stay in the band for 300 ms to count as settled. */
  private static final int HELD_READINGS = 30;

  /** A band narrower than two counts to each side is decided by chance. */
  private static final int LEAST_HALF_BAND = 2 * 10;

  private final int[] lastEnd = new int[SUMS];

  SettleTimes() {
    Arrays.fill(lastEnd, NEVER);
  }

  private SettleTimes(SettleTimes other) {
    System.arraycopy(other.lastEnd, 0, lastEnd, 0, SUMS);
  }

  SettleTimes copy() {
    return new SettleTimes(this);
  }

  /**
   * Takes a reading.
   *
   * @param sum of its ten conversions
   * @param number of its end: readings since closing
   */
  void add(int sum, int number) {
    lastEnd[sum] = number;
  }

  /**
   * When a rail was last outside a band, where it can be told and was inside for long enough.
   *
   * @param lowestSum lower edge of the band, in sums of ten conversions
   * @param highestSum upper edge
   * @return readings since closing, null = it did not settle, or the band is too narrow to tell
   */
  Integer settled(double lowestSum, double highestSum) {
    int last = lastOutside(lowestSum, highestSum);
    boolean told = highestSum - lowestSum >= 2 * LEAST_HALF_BAND;
    return told && last + HELD_READINGS <= number() ? (Integer) last : null;
  }

  /** Number of the last reading. */
  private int number() {
    return Arrays.stream(lastEnd).max().orElse(NEVER);
  }

  /**
   * End of the last reading outside a band, in readings since closing; 0 if none was.
   *
   * @param lowestSum lower edge of the band, in sums of ten conversions
   * @param highestSum upper edge
   */
  int lastOutside(double lowestSum, double highestSum) {
    int last = 0;
    for (int sum = 0; sum < SUMS; sum++) {
      if ((sum < lowestSum || sum > highestSum) && lastEnd[sum] > last) {
        last = lastEnd[sum];
      }
    }
    return last;
  }
}
