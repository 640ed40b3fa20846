package firstamp.protocol.codes;

/** What can be asked for once more. */
public enum Resend implements WireCode {
  /** The trip message. */
  TRIP(0x05),
  /** The sixteen capture blocks. */
  CAPTURE(0x06);

  private final int code;

  Resend(int code) {
    this.code = code;
  }

  @Override
  public int code() {
    return code;
  }
}
