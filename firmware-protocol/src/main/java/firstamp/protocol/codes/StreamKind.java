package firstamp.protocol.codes;

/** What the probe streams. */
public enum StreamKind implements WireCode {
  /** Nothing. */
  NONE(0),
  /** Every conversion. */
  RAW(1),
  /** One reading every 10 ms. */
  REDUCED(2);

  private final int code;

  StreamKind(int code) {
    this.code = code;
  }

  @Override
  public int code() {
    return code;
  }
}
