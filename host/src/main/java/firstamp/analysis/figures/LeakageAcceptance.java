package firstamp.analysis.figures;

/**
 * How much an electrolytic capacitor may leak, a few minutes after it was put on its volts, at room
 * temperature.
 *
 * <p>Both rules were seen second hand, in texts about parts, not in a standard: small aluminium
 * types max(0.01 C V, 3 uA) with C in uF and V the rated volts, result in uA; large cans of old
 * sets k C + 0.3 mA, k by the rated volts.
 */
public final class LeakageAcceptance {
  private static final double FLOOR_A = 3e-6;
  private static final double MICRO = 1e6;

  private LeakageAcceptance() {}

  /**
   * A new part of a small aluminium type.
   *
   * @param farad its capacitance
   * @param ratedV its rated volts
   * @return ampere
   */
  public static double newPartA(double farad, double ratedV) {
    return Math.max(0.01 * farad * MICRO * ratedV / MICRO, FLOOR_A);
  }

  /**
   * A large can of an old set.
   *
   * @param farad its capacitance
   * @param ratedV its rated volts, 3 to 500
   * @return ampere; NaN outside the range of the rule
   */
  public static double oldCanA(double farad, double ratedV) {
    double k;
    if (!(ratedV >= 3 && ratedV <= 500)) {
      return Double.NaN;
    } else if (ratedV <= 100) {
      k = 0.01;
    } else if (ratedV <= 250) {
      k = 0.02;
    } else if (ratedV <= 350) {
      k = 0.025;
    } else {
      k = 0.04;
    }
    return (k * farad * MICRO + 0.3) / 1000;
  }
}
