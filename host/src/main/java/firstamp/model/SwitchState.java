package firstamp.model;

/** State of the probe's switch; the order is that of the wire format. */
public enum SwitchState {
  /** Open. */
  OFF,
  /** Open; the probe checks that nothing flows and takes the zeros. */
  CHECK,
  /** Open; the supply is joined through the look resistor. */
  LOOK,
  /** Closed. */
  ON,
  /** Opened by the probe itself, latched. */
  TRIPPED
}
