package firstamp.protocol.codes;

/** A bit of the self-test; its code is the bit number. */
public enum SelfTestFault implements WireCode {
  /** Internal 1.1 V against 4.096 V off by more than 10 %. */
  REFERENCE(0),
  /** The chip's supply. */
  SUPPLY(1),
  /** An input is stuck. */
  INPUT_STUCK(2),
  /** Calibration checksum. */
  CALIBRATION(3),
  /** Program checksum. */
  PROGRAM(4),
  /** Memory pattern. */
  MEMORY(5),
  /** Little stack left. */
  STACK(6),
  /** Volts or current on the set side while off. */
  SWITCH_PATH(7),
  /** The watchdog caused the start; information, arming is allowed. */
  WATCHDOG_START(8),
  /** The record of the latched trip is damaged. */
  LATCH_RECORD(9),
  /** The converter does not convert. */
  CONVERTER(10),
  /** The chip's fuse bits are not those of the guide. */
  FUSES(11),
  /** The fine current input is far up and the coarse one at rest. */
  CURRENTS(12),
  /** On, with too few volts at the gate of the switch. */
  GATE(13),
  /** On, with more volts than the look foretold: its current reads too little. */
  SHUNT(14);

  private final int code;

  SelfTestFault(int code) {
    this.code = code;
  }

  @Override
  public int code() {
    return code;
  }
}
