package firstamp.log.code;

/** Solves for the coefficients of least error from {@link LagProducts}, and picks their number. */
final class NormalEquations {
  private static final int[] ORDERS = {0, 1, 2, 3, 4, 6, 8, 12, 16, 20, 24, 28, 32};

  /** What rounding to whole counts adds to every error. */
  static final double ROUNDING = 1.0 / 12;

  /** Coefficients of the variables, whole numbers times 2^-12. */
  record Solution(int[] coefficients) {}

  private NormalEquations() {}

  /**
   * Coefficients of the first variables, as many as pay.
   *
   * @param m moments, each piece divided by its mean square error or so
   * @param least variables that are always taken: the constant and the companion's
   * @param values that the moments stand for
   * @param floor of the error of all of them together
   */
  static Solution solve(double[] m, int variables, int least, double values, double floor) {
    double[][] l = new double[variables][];
    double[] y = new double[variables];
    int target = variables;
    double error = m[LagProducts.at(target, target)];
    double[] bits = new double[variables + 1];
    bits[0] = bits(values, error + floor, 0);
    int reached = 0;
    for (int i = 0; i < variables; i++) {
      l[i] = new double[i + 1];
      double sum = m[LagProducts.at(target, i)];
      for (int j = 0; j <= i; j++) {
        double dot = m[LagProducts.at(i, j)];
        if (i == j) {
          dot += Math.abs(dot) * 1e-9 + 1e-6;
        }
        for (int k = 0; k < j; k++) {
          dot -= l[i][k] * l[j][k];
        }
        if (i != j) {
          l[i][j] = dot / l[j][j];
          sum -= l[i][j] * y[j];
        } else if (dot > 0) {
          l[i][i] = Math.sqrt(dot);
          y[i] = sum / l[i][i];
        } else {
          return best(l, y, bits, reached, least, variables);
        }
      }
      error = Math.max(0, error - y[i] * y[i]);
      bits[i + 1] = bits(values, error + floor, i + 1);
      reached = i + 1;
    }
    return best(l, y, bits, reached, least, variables);
  }

  private static Solution best(
      double[][] l, double[] y, double[] bits, int reached, int least, int variables) {
    boolean[] barred = new boolean[variables + 1];
    while (true) {
      int best = -1;
      for (int order : ORDERS) {
        int n = least + order;
        if (n <= reached && !barred[n] && (best < 0 || bits[n] < bits[best])) {
          best = n;
        }
      }
      if (best < 0) {
        return new Solution(new int[least]);
      }
      int[] rounded = rounded(back(l, y, best));
      if (rounded != null) {
        return new Solution(rounded);
      }
      barred[best] = true;
    }
  }

  private static double bits(double values, double error, int variables) {
    return 0.5 * values * Math.log(error / values) / Math.log(2) + 16.0 * variables;
  }

  private static double[] back(double[][] l, double[] y, int n) {
    double[] a = new double[n];
    for (int i = n - 1; i >= 0; i--) {
      double sum = y[i];
      for (int k = i + 1; k < n; k++) {
        sum -= l[k][i] * a[k];
      }
      a[i] = sum / l[i][i];
    }
    return a;
  }

  /** Null when one does not fit into 16 bits; the constant may be longer. */
  private static int[] rounded(double[] a) {
    int[] rounded = new int[a.length];
    for (int i = 0; i < a.length; i++) {
      double scaled = Math.rint(a[i] * (1 << PredictorBank.POINT));
      if (Math.abs(scaled) > (i == 0 ? 1 << 29 : Short.MAX_VALUE)) {
        return null;
      }
      rounded[i] = (int) scaled;
    }
    return rounded;
  }

  /** The squared error of fixed coefficients over any piece, as a weighted sum of its moments. */
  static final class Error {
    private final int inner;
    private final int target;
    private final int taken;
    private final int whole;
    private final double[] weights;

    Error(int variables, int[] coefficients) {
      double scale = 1.0 / (1 << PredictorBank.POINT);
      taken = coefficients.length;
      inner = LagProducts.at(taken, 0);
      target = LagProducts.at(variables, 0);
      whole = LagProducts.at(variables, variables);
      weights = new double[inner + taken];
      for (int i = 0; i < taken; i++) {
        double a = scale * coefficients[i];
        for (int j = 0; j < i; j++) {
          weights[LagProducts.at(i, j)] = 2 * a * scale * coefficients[j];
        }
        weights[LagProducts.at(i, i)] = a * a;
        weights[inner + i] = -2 * a;
      }
    }

    double over(double[] m) {
      // Four sums at a time: adding to one waits for the addition before.
      double a = m[whole];
      double b = 0;
      double c = 0;
      double d = 0;
      int k = 0;
      for (; k + 4 <= inner; k += 4) {
        a += weights[k] * m[k];
        b += weights[k + 1] * m[k + 1];
        c += weights[k + 2] * m[k + 2];
        d += weights[k + 3] * m[k + 3];
      }
      for (; k < inner; k++) {
        a += weights[k] * m[k];
      }
      for (int i = 0; i < taken; i++) {
        b += weights[inner + i] * m[target + i];
      }
      return Math.max(0, a + b + (c + d));
    }
  }

  /** Adds moments times a weight. */
  static void add(double[] to, double[] moments, double weight) {
    for (int k = 0; k < to.length; k++) {
      to[k] += weight * moments[k];
    }
  }

  static double[] empty(int variables) {
    return new double[LagProducts.at(variables + 1, 0)];
  }
}
