package firstamp.analysis.statistics;

/**
 * Independent contributions put together: root of the sum of squares (JCGM 100:2008, 5.1.2) and
 * effective degrees of freedom by the Welch-Satterthwaite formula (G.4.1).
 *
 * @param standard combined standard uncertainty
 * @param degrees effective degrees of freedom, at most 1e9
 */
public record CombinedUncertainty(double standard, double degrees) {
  private static final double MOST_DEGREES = 1e9;

  /**
   * Combines.
   *
   * @param contributions standard uncertainties times their sensitivities
   * @param degrees of freedom of each; infinity where it is taken as known
   */
  public static CombinedUncertainty of(double[] contributions, double[] degrees) {
    double variance = 0;
    double scattered = 0;
    for (int k = 0; k < contributions.length; k++) {
      double square = contributions[k] * contributions[k];
      variance += square;
      scattered += square * square / degrees[k];
    }
    double effective = scattered > 0 ? variance * variance / scattered : MOST_DEGREES;
    return new CombinedUncertainty(Math.sqrt(variance), Math.min(MOST_DEGREES, effective));
  }

  /**
   * Combined standard uncertainty of correlated inputs (JCGM 100:2008, 5.2.2, equation 16).
   *
   * @param sensitivities partial derivatives
   * @param standard uncertainties of the inputs
   * @param correlations of each with each, 1 on the diagonal
   */
  public static double correlated(
      double[] sensitivities, double[] standard, double[][] correlations) {
    double variance = 0;
    for (int i = 0; i < standard.length; i++) {
      for (int j = 0; j < standard.length; j++) {
        variance +=
            sensitivities[i] * standard[i] * sensitivities[j] * standard[j] * correlations[i][j];
      }
    }
    return Math.sqrt(Math.max(0, variance));
  }

  /** Half-width of the interval that holds the value with this probability, for example 0.95. */
  public double expanded(double probability) {
    return StudentT.quantile(1 - probability, degrees) * standard;
  }
}
