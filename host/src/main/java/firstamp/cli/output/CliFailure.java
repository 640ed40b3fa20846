package firstamp.cli.output;

import firstamp.model.text.Explained;
import firstamp.model.text.Worded;

/**
 * Ends a command with an exit code and words that say what failed, on what, what was expected, what
 * to try.
 */
public final class CliFailure extends Exception implements Explained {
  private static final long serialVersionUID = 1L;

  private final int exitCode;
  private final transient Worded words;

  public CliFailure(int exitCode, String message) {
    this(exitCode, message, null);
  }

  public CliFailure(int exitCode, String message, Throwable cause) {
    this(exitCode, Worded.asIs(String.valueOf(message)), cause);
  }

  public CliFailure(int exitCode, Worded words) {
    this(exitCode, words, null);
  }

  public CliFailure(int exitCode, Worded words, Throwable cause) {
    super(words.english(), cause);
    this.exitCode = exitCode;
    this.words = words;
  }

  @Override
  public Worded words() {
    return words;
  }

  public int exitCode() {
    return exitCode;
  }
}
