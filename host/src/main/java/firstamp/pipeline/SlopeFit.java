package firstamp.pipeline;

/** Slope of the last values, one a second, by least squares. Not thread-safe. */
public final class SlopeFit {
  private final double[] values;
  private int held;

  public SlopeFit(int seconds) {
    values = new double[seconds];
  }

  public void add(double value) {
    if (held == values.length) {
      System.arraycopy(values, 1, values, 0, held - 1);
      held--;
    }
    values[held++] = value;
  }

  public void clear() {
    held = 0;
  }

  public boolean full() {
    return held == values.length;
  }

  /** Per minute; only when {@link #full}. */
  public double perMinute() {
    double middle = (held - 1) / 2.0;
    double products = 0;
    double squares = 0;
    for (int k = 0; k < held; k++) {
      products += (k - middle) * values[k];
      squares += (k - middle) * (k - middle);
    }
    return 60 * products / squares;
  }
}
