package firstamp.log;

/** The bench log could not be opened, read or written; the message says what to try. */
public final class LogException extends Exception {
  private static final long serialVersionUID = 1L;

  /** What kind of failure, for exit codes. */
  public enum Kind {
    /** No such file, or no such power-up in it. */
    MISSING,
    /** The file is not a bench log. */
    NOT_A_LOG,
    /** Written by a newer version of the program. */
    NEWER,
    /** The file is a bench log, but its content fails a check. */
    DAMAGED,
    /** The file cannot be read by this user. */
    UNREADABLE,
    /** The target of an export or backup is there already. */
    EXISTS,
    /** The file or its folder cannot be written. */
    READ_ONLY,
    /** No room on the disk. */
    FULL,
    /** The file was there and is no longer. */
    GONE,
    /** Another program holds the file. */
    BUSY,
    /** Any other failure of input or output. */
    IO
  }

  private final Kind kind;

  /**
   * A failure.
   *
   * @param kind for exit codes
   * @param message what failed, on what, what was expected, what to try
   * @param cause null if none
   */
  public LogException(Kind kind, String message, Throwable cause) {
    super(message, cause);
    this.kind = kind;
  }

  LogException(Kind kind, String message) {
    this(kind, message, null);
  }

  /** What kind of failure. */
  public Kind kind() {
    return kind;
  }
}
