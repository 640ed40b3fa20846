package firstamp.analysis.statistics;

/**
 * Student's t distribution, two-sided, through the incomplete beta function (M. Abramowitz, I. A.
 * Stegun, Handbook of Mathematical Functions, 26.5.8 and 26.7.1, from memory).
 */
public final class StudentT {
  private static final double[] LANCZOS = {
    676.5203681218851,
    -1259.1392167224028,
    771.32342877765313,
    -176.61502916214059,
    12.507343278686905,
    -0.13857109526572012,
    9.9843695780195716e-6,
    1.5056327351493116e-7
  };

  private StudentT() {}

  /** Probability of a |t| at least this large when nothing has changed. */
  static double twoSided(double t, double degrees) {
    if (!(degrees > 0)) {
      throw new IllegalArgumentException("degrees of freedom " + degrees + ", expected above 0");
    }
    return incompleteBeta(degrees / (degrees + t * t), degrees / 2, 0.5);
  }

  /** The |t| that is exceeded with this two-sided probability. */
  public static double quantile(double twoSided, double degrees) {
    double low = 0;
    double high = 1;
    while (twoSided(high, degrees) > twoSided && high < 1e12) {
      high *= 2;
    }
    for (int step = 0; step < 200 && high - low > 1e-14 * high; step++) {
      double middle = 0.5 * (low + high);
      if (twoSided(middle, degrees) > twoSided) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return 0.5 * (low + high);
  }

  private static double incompleteBeta(double x, double a, double b) {
    if (x <= 0) {
      return 0;
    }
    if (x >= 1) {
      return 1;
    }
    double front =
        StrictMath.exp(
            logGamma(a + b)
                - logGamma(a)
                - logGamma(b)
                + a * StrictMath.log(x)
                + b * StrictMath.log1p(-x));
    return x < (a + 1) / (a + b + 2)
        ? front * fraction(x, a, b) / a
        : 1 - front * fraction(1 - x, b, a) / b;
  }

  /** Continued fraction by Lentz's method. */
  private static double fraction(double x, double a, double b) {
    double c = 1;
    double d = 1 / guarded(1 - (a + b) * x / (a + 1));
    double value = d;
    for (int m = 1; m < 10_000; m++) {
      double even = m * (b - m) * x / ((a + 2 * m - 1) * (a + 2 * m));
      d = 1 / guarded(1 + even * d);
      c = guarded(1 + even / c);
      value *= d * c;
      double odd = -(a + m) * (a + b + m) * x / ((a + 2 * m) * (a + 2 * m + 1));
      d = 1 / guarded(1 + odd * d);
      c = guarded(1 + odd / c);
      value *= d * c;
      if (Math.abs(d * c - 1) < 1e-15) {
        break;
      }
    }
    return value;
  }

  private static double guarded(double value) {
    return Math.abs(value) < 1e-300 ? 1e-300 : value;
  }

  private static double logGamma(double x) {
    if (x < 0.5) {
      return StrictMath.log(StrictMath.PI / StrictMath.sin(StrictMath.PI * x)) - logGamma(1 - x);
    }
    double sum = 0.99999999999980993;
    for (int k = 0; k < LANCZOS.length; k++) {
      sum += LANCZOS[k] / (x + k);
    }
    double t = x + LANCZOS.length - 1.5;
    return 0.5 * StrictMath.log(2 * StrictMath.PI)
        + (x - 0.5) * StrictMath.log(t)
        - t
        + StrictMath.log(sum);
  }
}
