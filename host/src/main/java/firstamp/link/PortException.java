package firstamp.link;

import firstamp.model.text.Explained;
import firstamp.model.text.Worded;
import java.io.IOException;

/** A port cannot be used; the message says what failed, on which port, and what to try. */
public final class PortException extends IOException implements Explained {
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

  private static final String BUNDLE = "firstamp.link.ports";

  private final Kind kind;
  private final transient Worded words;

  /** Says the sentence of this key. */
  PortException(Kind kind, String key, Object... values) {
    this(kind, Worded.of(BUNDLE, key, values));
  }

  private PortException(Kind kind, Worded words) {
    super(words.english());
    this.kind = kind;
    this.words = words;
  }

  @Override
  public Worded words() {
    return words;
  }

  /** Why the port cannot be used. */
  public Kind kind() {
    return kind;
  }
}
