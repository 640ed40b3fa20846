package firstamp.emulate.box;

/** Which box the emulated probe is. */
public enum BoxKind {
  /** As soldered, and calibrated on the bench. */
  SOLDERED,
  /** As soldered, never calibrated. */
  NEW,
  /** Exactly nominal: no tolerance, no offset, an exact clock. */
  IDEAL
}
