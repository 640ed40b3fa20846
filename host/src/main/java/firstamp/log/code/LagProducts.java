package firstamp.log.code;

/**
 * Sums of products of a value, the values before it and its companion's, over a piece of a series:
 * all that least squares need. Packed lower triangle; variables are the constant 1, the companion's
 * taps, the values before from the latest on, and last the value itself.
 *
 * <p>No window is laid over the piece (the covariance method): a strong tone would leave several
 * counts of error at its ends.
 */
final class LagProducts {
  /** Values must not be larger, or sums of 256 products would leave an int. */
  static final int HIGHEST = 2047;

  private final int[] values;
  private final int shift;
  private final ReferenceChannel companion;
  private final int own;
  private final int taps;
  private final int variables;
  private final long[] x;
  private final long[] pairs;
  private final long[] sums;
  private final long[] seen;
  private final long[] seenPairs;
  private final long[] seenSums;

  /** For pieces of this series, with this many own coefficients. */
  LagProducts(int[] values, int shift, ReferenceChannel companion, int own) {
    this.values = values;
    this.shift = shift;
    this.companion = companion;
    this.own = own;
    this.taps = companion == null ? 0 : companion.taps();
    this.variables = 1 + taps + own;
    this.x = new long[own + 1 + PredictorBank.BLOCK];
    this.pairs = new long[x.length];
    this.sums = new long[own + (own & 1)];
    this.seen = new long[taps + 1 + PredictorBank.BLOCK];
    this.seenPairs = new long[seen.length];
    this.seenSums = new long[taps + (taps & 1)];
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
    int from = own + 1;
    int to = from + end - begin;
    int ahead = begin - from;
    long before = 0;
    for (int k = 0; k < from; k++) {
      long value = values[ahead + k] >> shift;
      x[k] = value;
      pairs[k] = value + (before << 32);
      before = value;
    }
    long sum = 0;
    long square = 0;
    for (int k = from; k < to; k++) {
      long value = values[ahead + k] >> shift;
      x[k] = value;
      pairs[k] = value + (before << 32);
      before = value;
      sum += value;
      square += value * value;
    }
    double[] m = new double[at(variables + 1, 0)];
    m[0] = to - from;
    m[at(variables, 0)] = sum;
    for (int i = 0; i < own; i++) {
      sum += x[from - 1 - i] - x[to - 1 - i];
      m[at(taps + 1 + i, 0)] = sum;
    }
    products(x, from, to - from, pairs, from - 1, -2, sums);
    for (int lag = 0; lag <= own; lag++) {
      long c = lag == 0 ? square : sums[lag - 1];
      m[at(variables, lag == 0 ? variables : taps + lag)] = c;
      // The same lag further back: one product comes, one goes.
      int row = taps + 1 + lag;
      int place = at(row, taps + 1);
      for (int i = 0; i + lag < own; i++) {
        c += x[from - 1 - i] * x[from - 1 - i - lag] - x[to - 1 - i] * x[to - 1 - i - lag];
        m[place] = c;
        place += row + 2;
        row++;
      }
    }
    if (taps > 0) {
      if (companion.stride() == 1) {
        joint(begin, to - from, m);
      } else {
        jointFar(begin, to - from, m);
      }
    }
    return m;
  }

  /**
   * Sums of the products of {@code n} values with the numbers at the same place and at places
   * further and further off. Two of these share one number; a product with it is two products.
   *
   * @param step from one pair to the next, 2 or -2
   */
  private static void products(
      long[] with, int first, int n, long[] pairs, int place, int step, long[] sums) {
    int at = place;
    int s = 0;
    for (; s + 8 <= sums.length; s += 8, at += 4 * step) {
      long a = 0;
      long b = 0;
      long c = 0;
      long d = 0;
      for (int k = 0; k < n; k++) {
        long value = with[first + k];
        a += pairs[at + k] * value;
        b += pairs[at + step + k] * value;
        c += pairs[at + 2 * step + k] * value;
        d += pairs[at + 3 * step + k] * value;
      }
      spread(a, sums, s);
      spread(b, sums, s + 2);
      spread(c, sums, s + 4);
      spread(d, sums, s + 6);
    }
    for (; s + 4 <= sums.length; s += 4, at += 2 * step) {
      long a = 0;
      long b = 0;
      for (int k = 0; k < n; k++) {
        long value = with[first + k];
        a += pairs[at + k] * value;
        b += pairs[at + step + k] * value;
      }
      spread(a, sums, s);
      spread(b, sums, s + 2);
    }
    for (; s + 2 <= sums.length; s += 2, at += step) {
      long a = 0;
      for (int k = 0; k < n; k++) {
        a += pairs[at + k] * with[first + k];
      }
      spread(a, sums, s);
    }
  }

  private static void spread(long sum, long[] sums, int at) {
    int low = (int) sum;
    sums[at] = low;
    sums[at + 1] = sum - low >> 32;
  }

  /** With a companion whose taps see the same values, one place apart. */
  private void joint(int begin, int n, double[] m) {
    for (int k = 0; k < n + taps; k++) {
      seen[k] = companion.value(begin + k, 0);
    }
    for (int k = 0; k + 1 < n + taps; k++) {
      seenPairs[k] = seen[k] + (seen[k + 1] << 32);
    }
    int from = own + 1;
    int last = taps - 1;
    products(seen, last, n, pairs, from - 1, -2, sums);
    for (int lag = 1; lag <= own; lag++) {
      put(m, lag, last, sums[lag - 1]);
    }
    products(x, from, n, seenPairs, 0, 2, seenSums);
    for (int t = last; t >= 0; t--) {
      put(m, 0, t, seenSums[t]);
    }
    for (int t = last - 1; t >= 0; t--) {
      for (int lag = 1; lag <= own; lag++) {
        double next = m[place(lag - 1, t + 1)];
        put(m, lag, t, next + x[from - lag] * seen[t] - x[from + n - lag] * seen[n + t]);
      }
    }
    products(seen, last, n, seenPairs, 0, 2, seenSums);
    long sum = 0;
    for (int k = last; k < last + n; k++) {
      sum += seen[k];
    }
    for (int t = last; t >= 0; t--) {
      m[at(1 + t, 0)] = sum;
      sum += t == 0 ? 0 : seen[t - 1] - seen[n + t - 1];
      long c = seenSums[t];
      for (int u = t, v = last; u >= 0; u--, v--) {
        m[at(1 + v, 1 + u)] = c;
        c += u == 0 ? 0 : seen[u - 1] * seen[v - 1] - seen[n + u - 1] * seen[n + v - 1];
      }
    }
  }

  private int place(int lag, int tap) {
    return lag == 0 ? at(variables, 1 + tap) : at(taps + lag, 1 + tap);
  }

  private void put(double[] m, int lag, int tap, double sum) {
    m[place(lag, tap)] = sum;
  }

  /** With one whose values lie further apart: each tap has its own. */
  private void jointFar(int begin, int n, double[] m) {
    long[][] h = new long[taps][n];
    int from = own + 1;
    for (int t = 0; t < taps; t++) {
      long sum = 0;
      long withValue = 0;
      for (int k = 0; k < n; k++) {
        h[t][k] = companion.value(begin + k, t);
        sum += h[t][k];
        withValue += h[t][k] * x[from + k];
      }
      m[at(1 + t, 0)] = sum;
      put(m, 0, t, withValue);
      products(h[t], 0, n, pairs, from - 1, -2, sums);
      for (int lag = 1; lag <= own; lag++) {
        put(m, lag, t, sums[lag - 1]);
      }
      for (int u = 0; u <= t; u++) {
        m[at(1 + t, 1 + u)] = product(h[t], h[u]);
      }
    }
  }

  private static long product(long[] a, long[] b) {
    long sum = 0;
    for (int k = 0; k < a.length; k++) {
      sum += a[k] * b[k];
    }
    return sum;
  }
}
