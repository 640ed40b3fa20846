package firstamp.cli.output;

/**
 * Ends a command with an exit code and words that say what failed, on what, what was expected, what
 * to try.
 */
public final class CliFailure extends Exception {
  private static final long serialVersionUID = 1L;

  private final int exitCode;

  public CliFailure(int exitCode, String message) {
    super(message);
    this.exitCode = exitCode;
  }

  public CliFailure(int exitCode, String message, Throwable cause) {
    super(message, cause);
    this.exitCode = exitCode;
  }

  public int exitCode() {
    return exitCode;
  }
}
