package firstamp.analysis.statistics;

/**
 * Difference of two means whose scatters differ (B. L. Welch, Biometrika 34, 1947), with the
 * uncertainty of two calibrations on top where it counts (degrees of freedom by the
 * Welch-Satterthwaite formula, JCGM 100:2008, G.4.1).
 *
 * @param difference second mean less the first
 * @param uncertainty of the difference, with its degrees of freedom
 * @param t difference over its uncertainty
 * @param p two-sided probability of such a t when nothing has changed
 */
public record Welch(double difference, CombinedUncertainty uncertainty, double t, double p) {

  /** Level at which a change counts as one: one in twenty. */
  public static final double LEVEL = 0.05;

  /**
   * Compares two samples.
   *
   * @param before at least two values
   * @param after at least two values
   * @param extra standard uncertainty that both means share in no way (calibrations), 0 = none
   * @return null if a sample is too small or nothing scatters at all
   */
  public static Welch of(double[] before, double[] after, double extra) {
    if (before.length < 2 || after.length < 2) {
      return null;
    }
    Moments first = Moments.of(before);
    Moments second = Moments.of(after);
    CombinedUncertainty combined =
        CombinedUncertainty.of(
            new double[] {first.meanUncertainty(), second.meanUncertainty(), extra},
            new double[] {before.length - 1, after.length - 1, Double.POSITIVE_INFINITY});
    if (!(combined.standard() > 0)) {
      return null;
    }
    double difference = second.mean() - first.mean();
    double t = difference / combined.standard();
    double p = StudentT.twoSided(t, combined.degrees());
    return new Welch(difference, combined, t, p);
  }

  /** Half-width of the 95 % interval of the difference. */
  public double plusMinus() {
    return uncertainty.expanded(1 - LEVEL);
  }

  /** Whether chance alone would show such a difference less than once in twenty. */
  public boolean significant() {
    return p < LEVEL;
  }
}
