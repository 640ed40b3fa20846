package firstamp.window.widgets;

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
public record Columns(double firstMs, double columnMs, float[] low, float[] high, float[] mean) {

  public double middleMs(int column) {
    return firstMs + (column + 0.5) * columnMs;
  }

  public int size() {
    return mean.length;
  }

  /** Highest of all, or the fallback when there is nothing. */
  public double highest(double fallback) {
    double highest = Double.NEGATIVE_INFINITY;
    for (float value : high) {
      if (value > highest) {
        highest = value;
      }
    }
    return highest == Double.NEGATIVE_INFINITY ? fallback : highest;
  }

  /** Lowest of all, or the fallback when there is nothing. */
  public double lowest(double fallback) {
    double lowest = Double.POSITIVE_INFINITY;
    for (float value : low) {
      if (value < lowest) {
        lowest = value;
      }
    }
    return lowest == Double.POSITIVE_INFINITY ? fallback : lowest;
  }
}
