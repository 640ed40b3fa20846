package firstamp.emulate.line;

/** How fast the emulated probe's time passes. */
public enum Pace {
  /** With the computer's clock. */
  REAL_TIME,
  /** As fast as it is read. */
  MAX
}
