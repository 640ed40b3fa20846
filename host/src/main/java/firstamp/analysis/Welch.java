package firstamp.analysis;

/**
 * Difference of two means whose scatters differ (B. L. Welch, Biometrika 34, 1947), with the
 * uncertainty of two calibrations on top where it counts (degrees of freedom by the
 * Welch-Satterthwaite formula, JCGM 100:2008, G.4.1).
 *
 * @param difference second mean less the first
 * @param standardUncertainty of the difference
 * @param degrees of freedom, effective
 * @param t difference over its uncertainty
 * @param p two-sided probability of such a t when nothing has changed
 */
public record Welch(
    double difference, double standardUncertainty, double degrees, double t, double p) {

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
    double one = first.meanUncertainty() * first.meanUncertainty();
    double two = second.meanUncertainty() * second.meanUncertainty();
    double variance = one + two + extra * extra;
    if (!(variance > 0)) {
      return null;
    }
    double scattered = one * one / (before.length - 1) + two * two / (after.length - 1);
    double degrees = scattered > 0 ? Math.min(1e9, variance * variance / scattered) : 1e9;
    double difference = second.mean() - first.mean();
    double uncertainty = Math.sqrt(variance);
    double t = difference / uncertainty;
    return new Welch(difference, uncertainty, degrees, t, StudentT.twoSided(t, degrees));
  }

  /** Half-width of the 95 % interval of the difference. */
  public double plusMinus() {
    return StudentT.quantile(LEVEL, degrees) * standardUncertainty;
  }

  /** Whether chance alone would show such a difference less than once in twenty. */
  public boolean significant() {
    return p < LEVEL;
  }
}
