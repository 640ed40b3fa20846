package firstamp.model;

/**
 * Number of the rules and figures by which a power-up is judged; kept with it.
 *
 * <p>Raised with every change after which a stored stream can come to another alarm, figure or
 * outcome. The stored summary of an older power-up stays as it is; a replay shows what would come
 * out differently now.
 */
public final class RulesVersion {
  /** Of power-ups from before the number was kept. */
  public static final int BEFORE = 1;

  /** From here on a mark is a note and does not affect rules or figures. */
  public static final int MARKS_ARE_NOTES = 2;

  /**
   * Of this program: 3 has the limiter's forced base in the plus-minus of currents, 4 watches every
   * set for a current that climbs, knows volts that a hand turns, and misses an opening that is not
   * seen.
   */
  public static final int NOW = 4;

  private RulesVersion() {}
}
