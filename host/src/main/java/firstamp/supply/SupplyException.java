package firstamp.supply;

import firstamp.model.text.Explained;
import firstamp.model.text.FailureWords;
import firstamp.model.text.Worded;
import java.io.IOException;

/** The bench supply does not do, or does not answer, what it was asked. */
final class SupplyException extends Exception implements Explained {
  private static final long serialVersionUID = 1L;

  /** What went wrong. */
  enum Kind {
    /** No answer in time, also when asked again. */
    SILENT,
    /** An answer that cannot be right. */
    WRONG,
    /** It reports an error of its own. */
    REFUSED,
    /** Switched off meanwhile: the exchange no longer matters. */
    OVERTAKEN
  }

  private final Kind kind;
  private final transient Worded words;

  /** What a supply did; {@code key} is in the bundle and continues "the bench supply". */
  SupplyException(Kind kind, String key, Object... values) {
    this(kind, say(key, values));
  }

  private SupplyException(Kind kind, Worded words) {
    super(words.english());
    this.kind = kind;
    this.words = words;
  }

  static Worded say(String key, Object... values) {
    return Worded.of("firstamp.supply.answers", key, values);
  }

  /** What is to be said when the port has failed. */
  static Worded lineGone(IOException gone) {
    Worded why =
        gone instanceof Explained explained ? explained.words() : FailureWords.worded(gone);
    return say("line-gone", why);
  }

  @Override
  public Worded words() {
    return words;
  }

  Kind kind() {
    return kind;
  }
}
