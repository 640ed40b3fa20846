package firstamp.cli.output;

import firstamp.model.text.Explained;
import firstamp.model.text.Worded;
import picocli.CommandLine.TypeConversionException;

/** A value of an option that its converter does not take; says what was expected. */
public final class BadValue extends TypeConversionException implements Explained {
  private static final long serialVersionUID = 1L;

  private final transient Worded words;

  public BadValue(Worded words) {
    super(words.english());
    this.words = words;
  }

  @Override
  public Worded words() {
    return words;
  }
}
