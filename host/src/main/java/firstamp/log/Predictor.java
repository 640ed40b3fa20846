package firstamp.log;

import java.util.Arrays;

/**
 * Linear prediction of a series from its own past and, if it pays, from a companion series around
 * the same place; coefficients are whole numbers, so that every reader gets the same prediction.
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

  private static final int LAST_COMPANION = COMPANION_FROM + COMPANION_TAPS - 1;
  private static final int[] ORDERS = {0, 1, 2, 3, 4, 6, 8, 12, 16, 20, 24, 28, 32};

  /** Own coefficients, those of the companion, and how long the code may be. */
  record Fit(int[] own, int[] joint, double bits) {}

  private Predictor() {}

  /**
   * Coefficients for the values from one place to another.
   *
   * @param h companion, of the same length as {@code x}; null = none
   * @param most highest number of own coefficients
   */
  static Fit fit(int[] x, int[] h, int from, int to, int most) {
    int taps = h == null ? 0 : COMPANION_TAPS;
    int low = Math.max(from, Math.max(most, taps));
    int high = h == null ? to : Math.min(to, h.length - LAST_COMPANION);
    if (high - low < 8 * (most + taps) || most + taps == 0) {
      return new Fit(new int[0], new int[0], Double.MAX_VALUE);
    }
    // The companion's come first: all orders of the own ones then share one decomposition.
    int n = taps + most;
    double[][] m = new double[n][n];
    double[] right = new double[n];
    boolean small = small(x, low - most, high) && (h == null || small(h, 0, h.length));
    for (int i = 0; i < n; i++) {
      right[i] = product(x, 0, series(x, h, i, taps), shift(i, taps), low, high, small);
      for (int j = 0; j <= i; j++) {
        int[] a = series(x, h, i, taps);
        int[] b = series(x, h, j, taps);
        int s = shift(i, taps);
        int t = shift(j, taps);
        if (i > 0 && j > 0 && i != taps && j != taps) {
          m[i][j] =
              m[i - 1][j - 1]
                  + (double) a[low - s] * b[low - t]
                  - (double) a[high - s] * b[high - t];
        } else {
          m[i][j] = product(a, s, b, t, low, high, small);
        }
      }
    }
    double power = product(x, 0, x, 0, low, high, small);
    // The level of the block goes into the intercept, not into the coefficients.
    double levelX = mean(x, low, high);
    double levelH = h == null ? 0 : mean(h, low, high);
    for (int i = 0; i < n; i++) {
      double a = i < taps ? levelH : levelX;
      right[i] -= (high - low) * a * levelX;
      for (int j = 0; j <= i; j++) {
        m[i][j] -= (high - low) * a * (j < taps ? levelH : levelX);
      }
    }
    return solve(m, right, power - (high - low) * levelX * levelX, taps, most, high - low);
  }

  private static double mean(int[] values, int low, int high) {
    long sum = 0;
    for (int k = low; k < high; k++) {
      sum += values[k];
    }
    return (double) sum / (high - low);
  }

  private static int[] series(int[] x, int[] h, int i, int taps) {
    return i < taps ? h : x;
  }

  /** How far behind the predicted value the i-th variable lies. */
  private static int shift(int i, int taps) {
    return i < taps ? i - LAST_COMPANION : i - taps + 1;
  }

  private static Fit solve(
      double[][] m, double[] right, double power, int taps, int most, int count) {
    int n = right.length;
    for (int i = 0; i < n; i++) {
      m[i][i] += Math.abs(m[i][i]) * 1e-10 + 1e-3;
    }
    double[] y = new double[n];
    double[] bits = new double[n + 1];
    // What rounding to whole counts adds to every error: below that no order is better.
    double floor = count / 12.0;
    double error = power;
    bits[0] = bits(count, error + floor, 0);
    int reached = 0;
    for (int i = 0; i < n && decompose(m, i); i++) {
      double sum = right[i];
      for (int k = 0; k < i; k++) {
        sum -= m[i][k] * y[k];
      }
      y[i] = sum / m[i][i];
      error = Math.max(0, error - y[i] * y[i]);
      bits[i + 1] = bits(count, error + floor, i + 1);
      reached = i + 1;
    }
    int best = -1;
    for (int order : ORDERS) {
      int variables = taps + order;
      if (order <= most && variables <= reached && (best < 0 || bits[variables] < bits[best])) {
        best = variables;
      }
    }
    if (best < 0) {
      return new Fit(new int[0], new int[0], Double.MAX_VALUE);
    }
    int[] all = rounded(back(m, y, best));
    int[] joint = new int[taps];
    for (int j = 0; j < taps; j++) {
      joint[j] = all[taps - 1 - j];
    }
    return new Fit(Arrays.copyOfRange(all, taps, best), joint, bits[best]);
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

  /** Sum of a[k - s] b[k - t] for k from low to high. */
  private static double product(int[] a, int s, int[] b, int t, int low, int high, boolean small) {
    double total = 0;
    if (!small) {
      for (int k = low; k < high; k++) {
        total += (double) a[k - s] * b[k - t];
      }
      return total;
    }
    // 512 products of values below 2048 stay within an int, which the JIT adds in parallel.
    for (int k = low; k < high; k += 512) {
      int stop = Math.min(high, k + 512);
      int sum = 0;
      for (int n = k; n < stop; n++) {
        sum += a[n - s] * b[n - t];
      }
      total += sum;
    }
    return total;
  }

  private static boolean small(int[] values, int begin, int end) {
    for (int k = Math.max(0, begin); k < end; k++) {
      if (values[k] > 2047 || values[k] < -2047) {
        return false;
      }
    }
    return true;
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
