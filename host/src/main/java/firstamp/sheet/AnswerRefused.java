package firstamp.sheet;

import firstamp.model.text.Explained;
import firstamp.model.text.Worded;

/** An answer that cannot be taken; the message says what was expected and what to try. */
public final class AnswerRefused extends Exception implements Explained {
  private static final long serialVersionUID = 1L;

  private final transient SheetQuestion question;
  private final transient Worded words;

  AnswerRefused(SheetQuestion question, Worded words) {
    super(words.english());
    this.words = words;
    this.question = question;
  }

  @Override
  public Worded words() {
    return words;
  }

  /** The question it was given to. */
  public SheetQuestion question() {
    return question;
  }
}
