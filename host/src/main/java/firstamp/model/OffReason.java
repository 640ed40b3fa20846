package firstamp.model;

import java.util.Locale;

/** Why the person switched off: what they smelt, heard or felt, or none of these. */
public enum OffReason {
  /** Smoke was seen. */
  SMOKE,
  /** It smelt. */
  SMELL,
  /** A noise. */
  NOISE,
  /** Something got warm. */
  WARM,
  /** Nothing: the work was done. */
  DONE,
  /** The key was hit by mistake. */
  SLIP;

  /** Name in files and on the command line. */
  public String id() {
    return name().toLowerCase(Locale.ROOT);
  }
}
