package firstamp.link;

import java.io.IOException;

/** A port cannot be used; the message says what failed, on which port, and what to try. */
public final class PortException extends IOException {
  private static final long serialVersionUID = 1L;

  /** Why the port cannot be used. */
  public enum Kind {
    /** There is no such port. */
    ABSENT,
    /** Another program has it. */
    BUSY,
    /** The user may not open it. */
    NOT_PERMITTED,
    /** It cannot be set up. */
    UNUSABLE,
    /** It was open and is gone. */
    GONE
  }

  private final Kind kind;

  PortException(Kind kind, String message) {
    super(message);
    this.kind = kind;
  }

  /** Why the port cannot be used. */
  public Kind kind() {
    return kind;
  }
}
