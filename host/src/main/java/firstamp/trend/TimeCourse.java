package firstamp.trend;

/**
 * The quantities of one power-up over time, in columns for drawing. Never waits for the disk; safe
 * to read from any thread.
 */
public interface TimeCourse {
  /** Whether there is nothing yet. */
  boolean isEmpty();

  /** Start on the time axis of the course, 0 while empty. */
  long beginMs();

  /** Course time of the end, 0 while empty. */
  long endMs();

  /**
   * Lowest, highest and mean of one quantity in each of n columns of equal width.
   *
   * @param quantity which
   * @param fromMs course time of the left edge
   * @param toMs course time of the right edge
   * @param n number of columns
   * @param low receives n values, NaN = nothing there
   * @param high receives n values
   * @param mean receives n values
   */
  void columns(
      Course.Quantity quantity,
      double fromMs,
      double toMs,
      int n,
      float[] low,
      float[] high,
      float[] mean);

  /** Changes whenever columns that were given before would now be given in a finer way. */
  default long version() {
    return 0;
  }

  /** Mean of a quantity over the time just before a moment; null where nothing was measured. */
  default Double meanBefore(Course.Quantity quantity, double ms, double overMs) {
    if (isEmpty()) {
      return null;
    }
    float[] low = new float[1];
    float[] high = new float[1];
    float[] mean = new float[1];
    columns(quantity, ms - overMs, ms, 1, low, high, mean);
    return Float.isNaN(mean[0]) ? null : (Double) (double) mean[0];
  }
}
