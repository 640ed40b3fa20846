package firstamp.app;

/** The guided steps with the probe box, in their order. */
public enum ProbeStep {
  /** Which box, which meter. */
  START,
  /** Clips together. */
  ZERO,
  /** A battery, and what the meter shows. */
  VOLTS,
  /** Resistor and meter, low volts: let the current flow. */
  LOW,
  /** What the meter showed. */
  LOW_READ,
  /** The same at higher volts. */
  HIGH,
  /** What the meter showed. */
  HIGH_READ,
  /** Of two resistors the larger one, by the meter; from here on it can be skipped. */
  LARGE,
  /** The smaller one. */
  SMALL,
  /** Both across a cell, meter and head clips on them. */
  LEVELS,
  /** What would be written. */
  RESULT,
  /** It is written. */
  WRITTEN,
  /** Resistor on the set terminals: does it cut? */
  CUT,
  /** Whether it did. */
  CUT_DONE;

  /** Whether its switch closes in this step. */
  public boolean feeds() {
    return this == LOW || this == HIGH || this == CUT;
  }

  /** SI symbol of the number that is asked for from the person's meter; null = none is. */
  public String unit() {
    return switch (this) {
      case VOLTS, LEVELS -> "V";
      case LOW_READ, HIGH_READ -> "A";
      case LARGE, SMALL -> "\u03a9";
      default -> null;
    };
  }

  /** Whether a number from the person's meter is asked for. */
  public boolean asksNumber() {
    return unit() != null;
  }

  /** Whether the rest of the calibration can be left out: meter and head keep their gain. */
  public boolean canBeSkipped() {
    return this == LARGE || this == SMALL || this == LEVELS;
  }
}
