package firstamp.log;

/**
 * Sums of products of a value, the values before it and its companion's, over a piece of a series:
 * all that least squares need. Packed lower triangle; variables are the constant 1, the companion's
 * taps, the values before from the latest on, and last the value itself.
 *
 * <p>No window is laid over the piece (the covariance method): a strong tone would leave several
 * counts of error at its ends.
 */
final class Moments {
  /** Values must not be larger, or sums of 256 products would leave an int. */
  static final int HIGHEST = 2047;

  private final int[] values;
  private final int shift;
  private final long[] x;
  private final long[] pairs;
  private final Companion companion;
  private final int own;
  private final int taps;
  private final int variables;

  /** For pieces of this series, with so many own coefficients. */
  Moments(int[] values, int shift, Companion companion, int own) {
    this.values = values;
    this.shift = shift;
    this.companion = companion;
    this.own = own;
    this.taps = companion == null ? 0 : companion.taps();
    this.variables = 1 + taps + own;
    this.x = new long[own + 1 + PredictorBank.BLOCK];
    this.pairs = new long[x.length];
  }

  /** Variables without the value itself. */
  int variables() {
    return variables;
  }

  static int at(int row, int column) {
    return row * (row + 1) / 2 + column;
  }

  /** First value that has enough before it. */
  int first() {
    return own + 1;
  }

  /** Sums from one place to another, at most 256 values. */
  double[] of(int begin, int end) {
    int order = own;
    int from = own + 1;
    int to = from + end - begin;
    long before = 0;
    for (int k = 0; k < to; k++) {
      long value = values[begin - from + k] >> shift;
      x[k] = value;
      pairs[k] = value + (before << 32);
      before = value;
    }
    double[][] c = lags(from, to, order);
    double[] sums = new double[order + 1];
    for (int k = from; k < to; k++) {
      sums[0] += x[k];
    }
    for (int i = 0; i < order; i++) {
      sums[i + 1] = sums[i] + x[from - 1 - i] - x[to - 1 - i];
    }
    double[] m = new double[at(variables + 1, 0)];
    m[0] = to - from;
    for (int i = 0; i <= order; i++) {
      int row = rowOf(i);
      m[at(row, 0)] = sums[i];
      for (int j = 0; j <= i; j++) {
        int column = rowOf(j);
        m[at(Math.max(row, column), Math.min(row, column))] = c[i][j];
      }
    }
    if (taps > 0) {
      joint(begin, to - from, m);
    }
    return m;
  }

  /** Row of a lag; 0 is the value itself. */
  private int rowOf(int lag) {
    return lag == 0 ? variables : taps + lag;
  }

  private double[][] lags(int from, int to, int order) {
    double[][] c = new double[order + 1][order + 1];
    int lag = 0;
    for (; lag + 8 <= order + 1; lag += 8) {
      long a = 0;
      long b = 0;
      long d = 0;
      long e = 0;
      for (int k = from; k < to; k++) {
        long value = x[k];
        a += pairs[k - lag] * value;
        b += pairs[k - lag - 2] * value;
        d += pairs[k - lag - 4] * value;
        e += pairs[k - lag - 6] * value;
      }
      spread(a, c, lag);
      spread(b, c, lag + 2);
      spread(d, c, lag + 4);
      spread(e, c, lag + 6);
    }
    for (; lag <= order; lag++) {
      long sum = 0;
      for (int k = from; k < to; k++) {
        sum += x[k] * x[k - lag];
      }
      c[lag][0] = sum;
    }
    for (int i = 0; i < order; i++) {
      for (int j = 0; j <= i; j++) {
        c[i + 1][j + 1] =
            c[i][j] + x[from - 1 - i] * x[from - 1 - j] - x[to - 1 - i] * x[to - 1 - j];
      }
    }
    return c;
  }

  private static void spread(long sum, double[][] c, int lag) {
    int low = (int) sum;
    c[lag][0] = low;
    c[lag + 1][0] = (int) (sum - low >> 32);
  }

  private void joint(int begin, int n, double[] m) {
    int from = own + 1;
    int to = from + n;
    int[][] h = new int[taps][n];
    for (int t = 0; t < taps; t++) {
      for (int k = 0; k < n; k++) {
        h[t][k] = companion.value(begin + k, t);
      }
    }
    boolean shifts = companion.stride() == 1;
    int[] lagged = new int[n];
    for (int i = 0; i <= own; i++) {
      for (int k = 0; k < n; k++) {
        lagged[k] = (int) x[from + k - i];
      }
      for (int t = taps - 1; t >= 0; t--) {
        double product;
        if (shifts && i > 0 && t < taps - 1) {
          product =
              cross(m, i - 1, t + 1)
                  + x[from - i] * (double) companion.value(begin - 1, t + 1)
                  - x[to - i] * (double) h[t + 1][n - 1];
        } else {
          product = product(lagged, h[t], n);
        }
        int row = rowOf(i);
        m[at(Math.max(row, 1 + t), Math.min(row, 1 + t))] = product;
      }
    }
    for (int t = taps - 1; t >= 0; t--) {
      double sum = 0;
      for (int value : h[t]) {
        sum += value;
      }
      m[at(1 + t, 0)] = sum;
      for (int u = 0; u <= t; u++) {
        m[at(1 + t, 1 + u)] =
            shifts && t < taps - 1
                ? m[at(2 + t, 2 + u)]
                    + (double) companion.value(begin - 1, t + 1) * companion.value(begin - 1, u + 1)
                    - (double) h[t + 1][n - 1] * h[u + 1][n - 1]
                : product(h[t], h[u], n);
      }
    }
  }

  private double cross(double[] m, int lag, int tap) {
    int row = rowOf(lag);
    return m[at(Math.max(row, 1 + tap), Math.min(row, 1 + tap))];
  }

  private static double product(int[] a, int[] b, int n) {
    int sum = 0;
    for (int k = 0; k < n; k++) {
      sum += a[k] * b[k];
    }
    return sum;
  }
}
