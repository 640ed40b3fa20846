package firstamp.log.code;

/**
 * Linear prediction of a series from its own past; coefficients are whole numbers, so that every
 * reader gets the same prediction.
 *
 * <p>The coefficients are those of least squares over the values themselves (the covariance method:
 * no window, or a strong tone would leave several counts of error at the ends).
 */
final class Predictor {
  /** Bits after the point of coefficients and predictions. */
  static final int POINT = 12;

  /** Most own coefficients. */
  static final int MOST_OWN = 32;

  /** Coefficients of a companion, where there is one: 8 before, the same place, 7 after. */
  static final int COMPANION_TAPS = 16;

  /** Place of the first companion coefficient against the predicted value. */
  static final int COMPANION_FROM = -8;

  private static final int[] ORDERS = {0, 1, 2, 3, 4, 6, 8, 12, 16, 20, 24, 28, 32};

  private Predictor() {}

  /**
   * Coefficients for the values from one place to another, the latest value's first.
   *
   * @param most highest number of coefficients
   */
  static int[] fit(int[] x, int from, int to, int most) {
    int low = Math.max(from, most);
    if (most == 0 || to - low < 8 * most) {
      return new int[0];
    }
    double[][] m = new double[most][most];
    double[] right = new double[most];
    double level = mean(x, low, to);
    double square = (to - low) * level * level;
    for (int i = 0; i < most; i++) {
      right[i] = product(x, 0, i + 1, low, to);
      for (int j = 0; j <= i; j++) {
        m[i][j] =
            j == 0
                ? product(x, i + 1, 1, low, to)
                : m[i - 1][j - 1]
                    + (double) x[low - 1 - i] * x[low - 1 - j]
                    - (double) x[to - 1 - i] * x[to - 1 - j];
      }
    }
    // The level goes into the intercept, not into the coefficients.
    for (int i = 0; i < most; i++) {
      right[i] -= square;
      for (int j = 0; j <= i; j++) {
        m[i][j] -= square;
      }
    }
    return solve(m, right, product(x, 0, 0, low, to) - square, to - low);
  }

  private static double mean(int[] values, int low, int high) {
    long sum = 0;
    for (int k = low; k < high; k++) {
      sum += values[k];
    }
    return (double) sum / (high - low);
  }

  private static int[] solve(double[][] m, double[] right, double power, int count) {
    int n = right.length;
    double[] y = new double[n];
    double[] bits = new double[n + 1];
    // What rounding to whole counts adds to every error: below that no order is better.
    double floor = count / 12.0;
    double error = power;
    bits[0] = bits(count, error + floor, 0);
    int reached = 0;
    for (int i = 0; i < n; i++) {
      m[i][i] += Math.abs(m[i][i]) * 1e-10 + 1e-3;
      if (!decompose(m, i)) {
        break;
      }
      double sum = right[i];
      for (int k = 0; k < i; k++) {
        sum -= m[i][k] * y[k];
      }
      y[i] = sum / m[i][i];
      error = Math.max(0, error - y[i] * y[i]);
      bits[i + 1] = bits(count, error + floor, i + 1);
      reached = i + 1;
    }
    int best = 0;
    for (int order : ORDERS) {
      if (order <= reached && bits[order] < bits[best]) {
        best = order;
      }
    }
    return rounded(back(m, y, best));
  }

  private static double bits(int count, double error, int variables) {
    return 0.5 * count * Math.log(error / count) / Math.log(2) + 16.0 * variables;
  }

  /** Row i of Cholesky's decomposition, in place. */
  private static boolean decompose(double[][] m, int i) {
    for (int j = 0; j <= i; j++) {
      double sum = m[i][j];
      for (int k = 0; k < j; k++) {
        sum -= m[i][k] * m[j][k];
      }
      if (i != j) {
        m[i][j] = sum / m[j][j];
      } else if (sum > 0) {
        m[i][i] = Math.sqrt(sum);
      } else {
        return false;
      }
    }
    return true;
  }

  private static double[] back(double[][] m, double[] y, int n) {
    double[] a = new double[n];
    for (int i = n - 1; i >= 0; i--) {
      double sum = y[i];
      for (int k = i + 1; k < n; k++) {
        sum -= m[k][i] * a[k];
      }
      a[i] = sum / m[i][i];
    }
    return a;
  }

  /** Sum of x[k - s] x[k - t] for k from low to high. */
  private static double product(int[] x, int s, int t, int low, int high) {
    double total = 0;
    for (int k = low; k < high; k++) {
      total += (double) x[k - s] * x[k - t];
    }
    return total;
  }

  private static int[] rounded(double[] a) {
    int[] coefficients = new int[a.length];
    for (int i = 0; i < a.length; i++) {
      double scaled = Math.rint(a[i] * (1 << POINT));
      coefficients[i] = (int) Math.max(Short.MIN_VALUE, Math.min(Short.MAX_VALUE, scaled));
    }
    return coefficients;
  }
}
