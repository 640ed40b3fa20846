package firstamp.model;

/** Why the probe opened the switch by itself; {@link #wireCode()} is that of the wire format. */
public enum TripCause {
  /** Over the inrush limit within the inrush time. */
  INRUSH("inrush"),
  /** Over the running limit. */
  RUNNING("running"),
  /** Over the budget of inrush I2t. */
  I2T("i2t"),
  /** The limiter held the current for longer than a surge may last. */
  HARD_SHORT("hard-short"),
  /** A rail or the supply over its limit. */
  OVER_VOLTAGE("over-voltage"),
  /** No valid frame from the host. */
  HOST_SILENCE("host-silence"),
  /** The chassis clip came off. */
  CHASSIS_CLIP("chassis-clip"),
  /** A running self-test failed. */
  SELF_TEST("self-test"),
  /** The mean over 100 ms was over the running limit (pulsed current). */
  MEAN("running"),
  /** A peak after the inrush time (pulsed current). */
  PEAK("running"),
  /** A start over its own limit. */
  START("running");

  private static final TripCause[] ALL = values();
  private final String id;

  TripCause(String id) {
    this.id = id;
  }

  /** Identifier in JSON lines and in the log. */
  public String id() {
    return id;
  }

  /** Number in the wire format, from 1. */
  public int wireCode() {
    return ordinal() + 1;
  }

  /**
   * The cause with this number.
   *
   * @param code 1 to 11
   */
  public static TripCause ofWire(int code) {
    if (code < 1 || code > ALL.length) {
      throw new IllegalArgumentException("trip cause " + code + ", allowed 1 to " + ALL.length);
    }
    return ALL[code - 1];
  }

  /** Whether the trip is about supply current and raises {@code over-current}. */
  public boolean overCurrent() {
    return switch (this) {
      case INRUSH, RUNNING, I2T, HARD_SHORT, MEAN, PEAK, START -> true;
      default -> false;
    };
  }
}
