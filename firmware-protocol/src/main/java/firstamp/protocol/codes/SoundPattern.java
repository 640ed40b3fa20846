package firstamp.protocol.codes;

/** What the beeper plays. */
public enum SoundPattern implements WireCode {
  /** Nothing. */
  QUIET(0),
  /** One beep. */
  ONE_BEEP(1),
  /** The alarm pattern. */
  ALARM(2),
  /** The trip pattern. */
  TRIP(3);

  private final int code;

  SoundPattern(int code) {
    this.code = code;
  }

  @Override
  public int code() {
    return code;
  }
}
