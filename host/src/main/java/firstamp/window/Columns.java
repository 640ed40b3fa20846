package firstamp.window;

import firstamp.session.Course;
import firstamp.session.TimeCourse;

/**
 * A quantity's columns in physical units over a grid that stays put while the picture moves, so
 * that lowest and highest do not shimmer.
 *
 * @param firstMs begin of the first column
 * @param columnMs width of a column
 * @param low lowest per column
 * @param high highest per column
 * @param mean mean per column
 */
record Columns(double firstMs, double columnMs, float[] low, float[] high, float[] mean) {

  /**
   * Reads from the course.
   *
   * @param nowMs nothing later is shown
   * @param pixels most columns that make sense
   */
  static Columns of(
      TimeCourse course, Course.Quantity quantity, TimeView time, double nowMs, int pixels) {
    double columnMs =
        Math.ceil(time.widthMs() / Math.max(50, pixels) / Course.SLOT_MS) * Course.SLOT_MS;
    double firstMs = Math.floor(time.fromMs() / columnMs) * columnMs;
    double endMs = Math.min(time.toMs() + columnMs, nowMs);
    int n = (int) Math.max(1, Math.ceil((endMs - firstMs) / columnMs));
    float[] low = new float[n];
    float[] high = new float[n];
    float[] mean = new float[n];
    course.columns(quantity, firstMs, firstMs + n * columnMs, n, low, high, mean);
    return new Columns(firstMs, columnMs, low, high, mean);
  }

  double middleMs(int column) {
    return firstMs + (column + 0.5) * columnMs;
  }

  int size() {
    return mean.length;
  }

  /** Highest of all, or the fallback when there is nothing. */
  double highest(double fallback) {
    double highest = Double.NEGATIVE_INFINITY;
    for (float value : high) {
      if (value > highest) {
        highest = value;
      }
    }
    return highest == Double.NEGATIVE_INFINITY ? fallback : highest;
  }

  /** Lowest of all, or the fallback when there is nothing. */
  double lowest(double fallback) {
    double lowest = Double.POSITIVE_INFINITY;
    for (float value : low) {
      if (value < lowest) {
        lowest = value;
      }
    }
    return lowest == Double.POSITIVE_INFINITY ? fallback : lowest;
  }
}
