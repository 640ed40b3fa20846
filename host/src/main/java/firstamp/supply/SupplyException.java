package firstamp.supply;

/** The bench supply does not do, or does not answer, what it was asked. */
final class SupplyException extends Exception {
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

  SupplyException(Kind kind, String message) {
    super(message);
    this.kind = kind;
  }

  Kind kind() {
    return kind;
  }
}
