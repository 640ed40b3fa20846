package firstamp.pipeline;

/** Mean of the last few values. Not thread-safe. */
public final class RecentMean {
  private final double[] values;
  private int count;
  private int next;

  public RecentMean(int length) {
    values = new double[length];
  }

  public void add(double value) {
    values[next] = value;
    next = (next + 1) % values.length;
    count = Math.min(values.length, count + 1);
  }

  public void clear() {
    count = 0;
    next = 0;
  }

  /** Null when there are none. */
  public Double mean() {
    if (count == 0) {
      return null;
    }
    double sum = 0;
    for (int k = 0; k < count; k++) {
      sum += values[k];
    }
    return sum / count;
  }
}
