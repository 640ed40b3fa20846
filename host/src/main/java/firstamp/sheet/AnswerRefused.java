package firstamp.sheet;

/** An answer that cannot be taken; the message says what was expected and what to try. */
public final class AnswerRefused extends Exception {
  private static final long serialVersionUID = 1L;

  private final transient SheetQuestion question;

  AnswerRefused(SheetQuestion question, String message) {
    super(message);
    this.question = question;
  }

  /** The question it was given to. */
  public SheetQuestion question() {
    return question;
  }
}
