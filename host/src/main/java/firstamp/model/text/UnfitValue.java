package firstamp.model.text;

/** A value or a name that cannot be, or something that is missing beside it. */
public final class UnfitValue extends IllegalArgumentException implements Explained {
  private static final long serialVersionUID = 1L;

  private final transient Worded words;

  /** Says what it is, what is expected, what to try. */
  public UnfitValue(Worded words) {
    super(words.english());
    this.words = words;
  }

  @Override
  public Worded words() {
    return words;
  }
}
