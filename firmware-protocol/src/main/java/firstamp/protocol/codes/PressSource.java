package firstamp.protocol.codes;

/** What was pressed. */
public enum PressSource implements WireCode {
  /** The push button: always an off. */
  BUTTON(1),
  /** The pedal: an off when held. */
  PEDAL(2);

  private final int code;

  PressSource(int code) {
    this.code = code;
  }

  @Override
  public int code() {
    return code;
  }
}
