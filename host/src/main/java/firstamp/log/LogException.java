package firstamp.log;

import firstamp.model.text.Explained;
import firstamp.model.text.Worded;

/** The bench log could not be opened, read or written; the message says what to try. */
public final class LogException extends Exception implements Explained {
  private static final String BUNDLE = "firstamp.log.failures";
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
  private final transient Worded words;

  /**
   * A failure.
   *
   * @param kind for exit codes
   * @param words what failed, on what, what was expected, what to try
   * @param cause null if none
   */
  public LogException(Kind kind, Worded words, Throwable cause) {
    super(words.english(), cause);
    this.kind = kind;
    this.words = words;
  }

  LogException(Kind kind, Worded words) {
    this(kind, words, null);
  }

  /** Why a log cannot be read or written, by the key of the sentence. */
  static Worded say(String key, Object... values) {
    return Worded.of(BUNDLE, key, values);
  }

  @Override
  public Worded words() {
    return words;
  }

  /** What kind of failure. */
  public Kind kind() {
    return kind;
  }
}
