package firstamp.protocol.codes;

/** What the probe's switch is doing. */
public enum ProbeState implements WireCode {
  /** Switch and look path open. */
  OFF(0),
  /** Before arming: waits until nothing flows and the volts fall, then takes the zeros. */
  CHECK(1),
  /** The supply is joined through the look resistor. */
  LOOK(2),
  /** The switch is closed. */
  ON(3),
  /** Opened by the probe itself; stays open until switched on again on purpose. */
  TRIPPED(4);

  private final int code;

  ProbeState(int code) {
    this.code = code;
  }

  @Override
  public int code() {
    return code;
  }
}
