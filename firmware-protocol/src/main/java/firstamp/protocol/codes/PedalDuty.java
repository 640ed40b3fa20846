package firstamp.protocol.codes;

/** What the pedal in the probe's own jack does. */
public enum PedalDuty implements WireCode {
  /** Any press is an off. */
  OFF(0),
  /** On only while the foot is down. */
  HOLD_TO_RUN(1),
  /** A tap is a mark, held is an off. */
  MARK(2);

  private final int code;

  PedalDuty(int code) {
    this.code = code;
  }

  @Override
  public int code() {
    return code;
  }
}
