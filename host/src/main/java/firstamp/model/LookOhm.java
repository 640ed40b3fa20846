package firstamp.model;

/**
 * Resistance of the set as the first look found it: volts over current.
 *
 * <p>Of less than a step and a half of the volts input only the step is known; the figure is a
 * bound then.
 *
 * @param ohm of the set, or what it is at most
 * @param atMost whether it is a bound
 */
public record LookOhm(double ohm, boolean atMost) {
  private static final double STEPS_TOLD = 1.5;

  /**
   * From one pair of conversions.
   *
   * @param volts over the set
   * @param amps through it
   * @param stepV volts of one count
   * @return null where no current flows
   */
  public static LookOhm of(double volts, double amps, double stepV) {
    if (!(amps > 0)) {
      return null;
    }
    boolean atMost = volts < STEPS_TOLD * stepV;
    return new LookOhm((atMost ? Math.max(volts, stepV) : volts) / amps, atMost);
  }
}
