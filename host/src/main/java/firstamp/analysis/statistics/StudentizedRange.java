package firstamp.analysis.statistics;

/**
 * The range of k normal means over their estimated deviation (E. S. Pearson, H. O. Hartley,
 * Biometrika Tables for Statisticians, from memory), by direct integration.
 *
 * <p>P(q) = integral over s of f(s) W(q s), W(w) = k integral of phi(z) (Phi(z) - Phi(z - w))^(k -
 * 1), f the density of the root of chi squared over its degrees of freedom.
 */
final class StudentizedRange {
  private static final double REACH = 8;
  private static final int STEPS = 240;

  /** From this many degrees of freedom on the deviation counts as known. */
  private static final double KNOWN = 1e5;

  private StudentizedRange() {}

  /** Probability of a range of at least q when all means are the same. */
  static double above(double q, int means, double degrees) {
    if (degrees >= KNOWN) {
      return 1 - rangeBelow(q, means);
    }
    // The density of s is narrow about 1: ten of its deviations to each side, at most from 0.
    double width = 10 / Math.sqrt(2 * degrees);
    double from = Math.max(1e-6, 1 - width);
    double to = 1 + width;
    double step = (to - from) / STEPS;
    double sum = 0;
    double weights = 0;
    for (int k = 0; k <= STEPS; k++) {
      double s = from + k * step;
      double simpson = k == 0 || k == STEPS ? 1 : k % 2 == 1 ? 4 : 2;
      double density =
          StrictMath.exp((degrees - 1) * StrictMath.log(s) - degrees * (s * s - 1) / 2);
      weights += simpson * density;
      sum += simpson * density * rangeBelow(q * s, means);
    }
    return 1 - sum / weights;
  }

  /** The q that is exceeded with this probability. */
  static double quantile(double above, int means, double degrees) {
    double low = 0;
    double high = 200;
    while (high - low > 1e-7) {
      double middle = (low + high) / 2;
      if (above(middle, means, degrees) > above) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return (low + high) / 2;
  }

  private static double rangeBelow(double w, int means) {
    if (w <= 0) {
      return 0;
    }
    double step = 2 * REACH / STEPS;
    double sum = 0;
    for (int k = 0; k <= STEPS; k++) {
      double z = -REACH + k * step;
      double simpson = k == 0 || k == STEPS ? 1 : k % 2 == 1 ? 4 : 2;
      double density = StrictMath.exp(-z * z / 2) / Math.sqrt(2 * StrictMath.PI);
      sum += simpson * density * StrictMath.pow(Math.max(0, below(z) - below(z - w)), means - 1);
    }
    return Math.min(1, means * sum * step / 3);
  }

  /**
   * Normal distribution by its series (G. Marsaglia, Journal of Statistical Software 11(4), 2004).
   */
  private static double below(double z) {
    if (z < -REACH) {
      return 0;
    }
    if (z > REACH) {
      return 1;
    }
    double sum = z;
    double term = z;
    for (int odd = 3; Math.abs(term) > 1e-17 * Math.abs(sum) && odd < 400; odd += 2) {
      term *= z * z / odd;
      sum += term;
    }
    return 0.5 + sum * StrictMath.exp(-z * z / 2) / Math.sqrt(2 * StrictMath.PI);
  }
}
