package firstamp.pipeline;

import firstamp.model.TripCause;
import firstamp.model.text.Explained;
import firstamp.model.text.Worded;
import java.io.Serializable;

/** A power-up cannot be started; the message says why, and what to try. */
public final class RunRefused extends Exception implements Explained {
  private static final long serialVersionUID = 1L;

  /** What kind of obstacle. */
  public enum Kind {
    /** The probe does not answer, or speaks another version. */
    PROBE,
    /** The probe or a caution refuses arming. */
    ARMING,
    /** The sheet cannot be watched by this probe. */
    SHEET,
    /** The bench log cannot be written, and nobody is there to say that it may be done without. */
    LOG
  }

  private final Kind kind;
  private final Latched latched;
  private final transient Worded words;

  /**
   * What the probe box remembers of switching itself off.
   *
   * @param number that it wants back before it switches on again
   * @param cause of it, null = not known
   */
  public record Latched(int number, TripCause cause) implements Serializable {}

  public RunRefused(Kind kind, Worded words) {
    super(words.english());
    this.kind = kind;
    this.latched = null;
    this.words = words;
  }

  /** The probe box stays off because of what it remembers. */
  public RunRefused(Latched latched, Worded words) {
    super(words.english());
    this.kind = Kind.ARMING;
    this.latched = latched;
    this.words = words;
  }

  @Override
  public Worded words() {
    return words;
  }

  /** What the probe box remembers and has to be switched on again after; null = it is not that. */
  public Latched latched() {
    return latched;
  }

  /** What kind of obstacle. */
  public Kind kind() {
    return kind;
  }
}
