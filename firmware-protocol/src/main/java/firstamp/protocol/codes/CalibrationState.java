package firstamp.protocol.codes;

/** What the probe found where its calibration is kept. */
public enum CalibrationState implements WireCode {
  /** Never calibrated: nominal values, every figure +-5 %. */
  BLANK(0),
  /** Present and whole. */
  VALID(1),
  /** Its checksum is wrong; arming is refused. */
  DAMAGED(2);

  private final int code;

  CalibrationState(int code) {
    this.code = code;
  }

  @Override
  public int code() {
    return code;
  }
}
