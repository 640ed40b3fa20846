package firstamp.alarm.trail;

/**
 * Two-sided tabular cumulative sum of standardised values (Page's scheme): tells a lasting shift
 * from scatter.
 *
 * <p>With k = 1/2 and h = 5 scatter alone signals once in 465 values on average, a lasting shift of
 * one standard deviation after 10 (Montgomery, Introduction to Statistical Quality Control, table
 * of average run lengths; from memory, the figures are checked in the tests).
 */
public final class Cusum {
  private final double slack;
  private final double decision;
  private double high;
  private double low;

  /**
   * Nothing summed yet.
   *
   * @param slack k, in standard deviations: half of the shift that matters
   * @param decision h, in standard deviations
   */
  public Cusum(double slack, double decision) {
    this.slack = slack;
    this.decision = decision;
  }

  /** Takes a value, in standard deviations from where it belongs. */
  public void take(double deviation) {
    high = Math.max(0, high + deviation - slack);
    low = Math.max(0, low - deviation - slack);
  }

  public double high() {
    return high;
  }

  public double low() {
    return low;
  }

  /** Whether the values have shifted upwards. */
  public boolean above() {
    return high > decision;
  }

  /** Whether they have shifted downwards. */
  public boolean below() {
    return low > decision;
  }
}
