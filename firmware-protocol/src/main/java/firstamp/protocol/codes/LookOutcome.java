package firstamp.protocol.codes;

/** What the first look, or the check before it, found. */
public enum LookOutcome implements WireCode {
  /** A load within the ordinary. */
  CLEAR(0),
  /** Under 30 ohm: a motor or a cold lamp. */
  LOW(1),
  /** No current: nothing is joined. */
  NOTHING_JOINED(2),
  /** No look was asked for. */
  SKIPPED(3),
  /** Under 3 ohm: short, or a cold lamp. */
  SHORT(4),
  /** The supply is the wrong way round. */
  REVERSED(5),
  /** The supply is above 1.15 of nominal. */
  TOO_HIGH(6),
  /** The supply is under 0.3 of nominal. */
  NO_SUPPLY(7),
  /** The surge would be more than the limiter can hold. */
  TOO_MUCH_CHARGE(8),
  /** Current and volts of the look do not fit each other: the shunt. */
  SHUNT(9),
  /** The check before the look: current flows with the switch off. */
  CURRENT_WHILE_OFF(16),
  /**
   * The check before the look: the volts do not fall; the switch does not open, or the set has
   * another feed.
   */
  VOLTS_STAY(17),
  /** The check before the look: I, J or V does not stand where it must when nothing flows. */
  NO_ZERO(18),
  /** The test before the look: the limiter does not hold the switch. */
  LIMITER(19);

  private final int code;

  LookOutcome(int code) {
    this.code = code;
  }

  @Override
  public int code() {
    return code;
  }
}
