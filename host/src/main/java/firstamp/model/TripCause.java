package firstamp.model;

/** Why the probe opened the switch by itself; {@link #wireCode()} is that of the wire format. */
public enum TripCause {
  /** Over the inrush limit within the inrush time. */
  INRUSH(1, "inrush"),
  /** Over the running limit. */
  RUNNING(2, "running"),
  /** Over the budget of inrush I2t. */
  I2T(3, "i2t"),
  /** The limiter held the current for longer than a surge may last. */
  HARD_SHORT(4, "hard-short"),
  /** A rail or the supply over its limit. */
  OVER_VOLTAGE(5, "over-voltage"),
  /** No valid frame from the host. */
  HOST_SILENCE(6, "host-silence"),
  /** The chassis clip came off. */
  CHASSIS_CLIP(7, "chassis-clip"),
  /** A running self-test failed. */
  SELF_TEST(8, "self-test"),
  /** The mean over 100 ms was over the running limit (pulsed current). */
  MEAN(9, "running"),
  /** A peak after the inrush time (pulsed current). */
  PEAK(10, "running"),
  /** A start over its own limit. */
  START(11, "running");

  private final int wireCode;
  private final String id;

  TripCause(int wireCode, String id) {
    this.wireCode = wireCode;
    this.id = id;
  }

  /** Identifier in JSON lines and in the log. */
  public String id() {
    return id;
  }

  /** Number in the wire format, from 1. */
  public int wireCode() {
    return wireCode;
  }

  /**
   * The cause with this number.
   *
   * @param code 1 to 11
   */
  public static TripCause ofWire(int code) {
    for (TripCause cause : values()) {
      if (cause.wireCode == code) {
        return cause;
      }
    }
    throw new IllegalArgumentException("trip cause " + code + ", allowed 1 to 11");
  }

  /** Whether the trip is about supply current and raises {@code over-current}. */
  public boolean overCurrent() {
    return switch (this) {
      case INRUSH, RUNNING, I2T, HARD_SHORT, MEAN, PEAK, START -> true;
      default -> false;
    };
  }
}
