package firstamp.emulate.bench;

/** How the supply reaches the set. */
public enum Joined {
  /** Not at all. */
  OPEN,
  /** Through the look resistor. */
  LOOK,
  /** Through the closed switch. */
  CLOSED
}
