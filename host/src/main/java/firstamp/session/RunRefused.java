package firstamp.session;

/** A power-up cannot be started; the message says what stands against it and what to try. */
public final class RunRefused extends Exception {
  private static final long serialVersionUID = 1L;

  /** What kind of obstacle. */
  public enum Kind {
    /** The probe does not answer, or speaks another version. */
    PROBE,
    /** The probe or a caution refuses arming. */
    ARMING,
    /** The sheet cannot be watched by this probe. */
    SHEET
  }

  private final Kind kind;

  RunRefused(Kind kind, String message) {
    super(message);
    this.kind = kind;
  }

  /** What kind of obstacle. */
  public Kind kind() {
    return kind;
  }
}
