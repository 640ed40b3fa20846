package firstamp.protocol.codes;

/** Who or what changed the switch. */
public enum SwitchCause implements WireCode {
  /** The probe has started. */
  START(0),
  /** The user, at the host. */
  USER(1),
  /** A rule of the host. */
  RULE(2),
  /** The time asked for is over. */
  TIME(3),
  /** The host program was told to end. */
  SIGNAL(4),
  /** The push button. */
  BUTTON(5),
  /** The held pedal. */
  PEDAL(6),
  /** A trip. */
  TRIP(7),
  /** The look, whose result did not let the switch close. */
  LOOK(8),
  /** The chassis clip was lost before closing. */
  CHASSIS_CLIP(9),
  /** The host fell silent before closing. */
  HOST_SILENCE(10);

  private final int code;

  SwitchCause(int code) {
    this.code = code;
  }

  @Override
  public int code() {
    return code;
  }
}
