package firstamp.window;

/** There is no screen to open a window on. */
public final class NoDisplayException extends Exception {
  private static final long serialVersionUID = 1L;

  NoDisplayException(Throwable cause) {
    super(
        "No screen to open the window on (DISPLAY is not set, or the screen refuses). "
            + "Run from a desktop session, or without a window: add --headless (and --for 10s).",
        cause);
  }
}
