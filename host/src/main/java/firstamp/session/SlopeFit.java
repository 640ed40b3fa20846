package firstamp.session;

/** Slope of the last values, one a second, by least squares. Not thread-safe. */
final class SlopeFit {
  private final double[] values;
  private int held;

  SlopeFit(int seconds) {
    values = new double[seconds];
  }

  void add(double value) {
    if (held == values.length) {
      System.arraycopy(values, 1, values, 0, held - 1);
      held--;
    }
    values[held++] = value;
  }

  void clear() {
    held = 0;
  }

  boolean full() {
    return held == values.length;
  }

  /** Per minute; only when {@link #full}. */
  double perMinute() {
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
