package firstamp.window;

/**
 * A pedal that sends a key: a tap says next, held it switches off.
 *
 * <p>Systems repeat a key that is held, some as releases and presses: a release counts only when no
 * press follows it at once. Times are handed in; one thread.
 */
final class Pedal {
  /** Held this long it is an off. */
  static final long HELD_MILLIS = 600;

  /** A repeated key comes back within this time. */
  static final long REPEAT_MILLIS = 40;

  private final BenchActions actions;
  private boolean down;
  private boolean offGiven;
  private long downMillis;
  private long upMillis = -1;

  Pedal(BenchActions actions) {
    this.actions = actions;
  }

  void pressed(long millis) {
    upMillis = -1;
    if (!down) {
      down = true;
      offGiven = false;
      downMillis = millis;
    }
    tick(millis);
  }

  void released(long millis) {
    if (down) {
      upMillis = millis;
    }
  }

  /** Called often: finds out that it is held, or that it was let go for good. */
  void tick(long millis) {
    if (!down) {
      return;
    }
    if (upMillis >= 0 && millis - upMillis > REPEAT_MILLIS) {
      down = false;
      if (!offGiven) {
        tap();
      }
    } else if (!offGiven && upMillis < 0 && millis - downMillis >= HELD_MILLIS) {
      offGiven = true;
      actions.offOrHold();
    }
  }

  private void tap() {
    actions.tap();
  }
}
