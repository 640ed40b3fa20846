package firstamp.cli.output;

import firstamp.model.text.Explained;
import firstamp.model.text.Worded;
import picocli.CommandLine;
import picocli.CommandLine.ParameterException;

/** A command line that its command cannot take; says what was expected. */
public final class UsageProblem extends ParameterException implements Explained {
  private static final long serialVersionUID = 1L;

  private final transient Worded words;

  public UsageProblem(CommandLine line, Worded words) {
    this(line, words, null);
  }

  public UsageProblem(CommandLine line, Worded words, Throwable cause) {
    super(line, words.english(), cause);
    this.words = words;
  }

  @Override
  public Worded words() {
    return words;
  }
}
