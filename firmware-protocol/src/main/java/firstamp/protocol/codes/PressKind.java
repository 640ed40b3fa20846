package firstamp.protocol.codes;

/** How it was pressed. */
public enum PressKind implements WireCode {
  /** Released within 600 ms. */
  TAP(1),
  /** Down for 600 ms. */
  HELD(2),
  /** Just went down. */
  DOWN(3);

  private final int code;

  PressKind(int code) {
    this.code = code;
  }

  @Override
  public int code() {
    return code;
  }
}
