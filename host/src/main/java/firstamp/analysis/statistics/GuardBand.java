package firstamp.analysis.statistics;

/**
 * Whether a figure is inside its limit, its uncertainty counted (guard band of the expanded
 * uncertainty, ILAC-G8:09/2019 section 4).
 */
public enum GuardBand {
  /** Inside, uncertainty and all. */
  INSIDE,
  /** Inside, but its uncertainty reaches over the limit. */
  LIKELY_INSIDE,
  /** Outside, but its uncertainty reaches back. */
  LIKELY_OUTSIDE,
  /** Outside, uncertainty and all. */
  OUTSIDE;

  /**
   * Judges against an upper limit.
   *
   * @param value figure
   * @param plusMinus its expanded uncertainty
   * @param limit upper limit
   */
  public static GuardBand below(double value, double plusMinus, double limit) {
    if (value <= limit) {
      return value <= limit - plusMinus ? INSIDE : LIKELY_INSIDE;
    }
    return value <= limit + plusMinus ? LIKELY_OUTSIDE : OUTSIDE;
  }

  /** Judges against a lower limit. */
  public static GuardBand above(double value, double plusMinus, double limit) {
    return below(-value, plusMinus, -limit);
  }
}
