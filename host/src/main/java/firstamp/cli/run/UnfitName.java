package firstamp.cli.run;

import firstamp.model.text.Explained;
import firstamp.model.text.Worded;

/** A name that there is not, or something that is missing beside it. */
public final class UnfitName extends IllegalArgumentException implements Explained {
  private static final long serialVersionUID = 1L;

  private final transient Worded words;

  public UnfitName(Worded words) {
    super(words.english());
    this.words = words;
  }

  @Override
  public Worded words() {
    return words;
  }
}
