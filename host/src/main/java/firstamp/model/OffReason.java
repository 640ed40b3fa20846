package firstamp.model;

import java.util.Locale;

/** Why somebody switched off: what nose, ears and fingers said, or none of it. */
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
