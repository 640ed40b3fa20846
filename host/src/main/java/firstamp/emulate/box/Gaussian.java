package firstamp.emulate.box;

/** Quantiles of the standard normal distribution. */
public final class Gaussian {
  private static final int TERMS = 120;
  private static final int HALVINGS = 60;

  private Gaussian() {}

  /** The value under which the share {@code p} lies, 0 below p below 1. */
  public static double quantile(double p) {
    double low = -9;
    double high = 9;
    for (int i = 0; i < HALVINGS; i++) {
      double middle = (low + high) / 2;
      if (share(middle) < p) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return (low + high) / 2;
  }

  /** 1/2 + phi(x) (x + x^3/3 + x^5/15 + ...): the series of Abramowitz and Stegun 26.2.11. */
  private static double share(double x) {
    double term = x;
    double sum = x;
    for (int n = 1; n < TERMS; n++) {
      term *= x * x / (2 * n + 1);
      sum += term;
    }
    return 0.5 + sum * Math.exp(-x * x / 2) / Math.sqrt(2 * Math.PI);
  }
}
