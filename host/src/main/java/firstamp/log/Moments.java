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
  private final long[][] h;
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
    this.h = new long[taps][x.length];
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
    double[] products = new double[order + 1];
    products(x, from, to, products);
    for (int lag = 0; lag <= order; lag++) {
      c[lag][0] = products[lag];
    }
    for (int i = 0; i < order; i++) {
      for (int j = 0; j <= i; j++) {
        c[i + 1][j + 1] =
            c[i][j] + x[from - 1 - i] * x[from - 1 - j] - x[to - 1 - i] * x[to - 1 - j];
      }
    }
    return c;
  }

  /** Sums of the products of these values with the series' own, of the same place and before. */
  private void products(long[] with, int from, int to, double[] sums) {
    int lag = 0;
    for (; lag + 8 <= sums.length; lag += 8) {
      long a = 0;
      long b = 0;
      long d = 0;
      long e = 0;
      for (int k = from; k < to; k++) {
        long value = with[k];
        a += pairs[k - lag] * value;
        b += pairs[k - lag - 2] * value;
        d += pairs[k - lag - 4] * value;
        e += pairs[k - lag - 6] * value;
      }
      spread(a, sums, lag);
      spread(b, sums, lag + 2);
      spread(d, sums, lag + 4);
      spread(e, sums, lag + 6);
    }
    for (; lag + 2 <= sums.length; lag += 2) {
      long a = 0;
      for (int k = from; k < to; k++) {
        a += pairs[k - lag] * with[k];
      }
      spread(a, sums, lag);
    }
    for (; lag < sums.length; lag++) {
      long sum = 0;
      for (int k = from; k < to; k++) {
        sum += with[k] * x[k - lag];
      }
      sums[lag] = sum;
    }
  }

  private static void spread(long sum, double[] sums, int lag) {
    int low = (int) sum;
    sums[lag] = low;
    sums[lag + 1] = (int) (sum - low >> 32);
  }

  private void joint(int begin, int n, double[] m) {
    int from = own + 1;
    int to = from + n;
    for (int t = 0; t < taps; t++) {
      for (int k = 0; k < n; k++) {
        h[t][from + k] = companion.value(begin + k, t);
      }
    }
    boolean shifts = companion.stride() == 1;
    double[] products = new double[own + 1];
    for (int t = taps - 1; t >= 0; t--) {
      boolean shifted = shifts && t < taps - 1;
      if (!shifted) {
        products(h[t], from, to, products);
      } else {
        products[0] = product(x, h[t], from, to);
      }
      for (int i = 0; i <= own; i++) {
        if (shifted && i > 0) {
          products[i] =
              cross(m, i - 1, t + 1)
                  + x[from - i] * (double) companion.value(begin - 1, t + 1)
                  - x[to - i] * (double) h[t + 1][to - 1];
        }
        int row = rowOf(i);
        m[at(Math.max(row, 1 + t), Math.min(row, 1 + t))] = products[i];
      }
    }
    for (int t = taps - 1; t >= 0; t--) {
      double sum = 0;
      for (int k = from; k < to; k++) {
        sum += h[t][k];
      }
      m[at(1 + t, 0)] = sum;
      for (int u = 0; u <= t; u++) {
        m[at(1 + t, 1 + u)] =
            shifts && t < taps - 1
                ? m[at(2 + t, 2 + u)]
                    + (double) companion.value(begin - 1, t + 1) * companion.value(begin - 1, u + 1)
                    - (double) h[t + 1][to - 1] * h[u + 1][to - 1]
                : product(h[t], h[u], from, to);
      }
    }
  }

  private double cross(double[] m, int lag, int tap) {
    int row = rowOf(lag);
    return m[at(Math.max(row, 1 + tap), Math.min(row, 1 + tap))];
  }

  private static double product(long[] a, long[] b, int from, int to) {
    long sum = 0;
    for (int k = from; k < to; k++) {
      sum += a[k] * b[k];
    }
    return sum;
  }
}
