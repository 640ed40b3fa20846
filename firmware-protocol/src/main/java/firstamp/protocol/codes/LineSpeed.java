package firstamp.protocol.codes;

/** Speed of the serial line. */
public enum LineSpeed implements WireCode {
  /** 500 000 baud: the raw stream fits. */
  FAST(0, 500_000),
  /** 250 000 baud: the reduced stream only. */
  SLOW(1, 250_000);

  private final int code;
  private final int baud;

  LineSpeed(int code, int baud) {
    this.code = code;
    this.baud = baud;
  }

  @Override
  public int code() {
    return code;
  }

  /** Bits per second. */
  public int baud() {
    return baud;
  }
}
