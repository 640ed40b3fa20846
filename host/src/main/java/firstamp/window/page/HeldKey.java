package firstamp.window.page;

/**
 * The key that switches on: it has to be held for half a second. Letting go early does nothing; a
 * key that repeats itself as release and press counts as held. Pure; time comes as an argument.
 */
public final class HeldKey {
  /** So long it has to be held. */
  static final long HOLD_MILLIS = 500;

  /** A key that repeats itself comes back within this time. */
  public static final long REPEAT_MILLIS = 90;

  private static final long NOT = -1;

  private long downMillis = NOT;
  private long upMillis = NOT;
  private boolean meant;

  /**
   * It goes down, or repeats itself.
   *
   * @param asked whether that key is asked for now; one that was down before means something else
   */
  public void pressed(long millis, boolean asked) {
    boolean fresh = downMillis == NOT || upMillis != NOT && millis - upMillis >= REPEAT_MILLIS;
    if (fresh) {
      downMillis = millis;
      meant = asked;
    }
    upMillis = NOT;
  }

  /** It goes up, for good or only to repeat itself. */
  public void released(long millis) {
    if (downMillis != NOT) {
      upMillis = millis;
    }
  }

  /** What it was held for is not asked any more: it has to be let go and pressed again. */
  public void unask() {
    meant = false;
  }

  /** Whether it is up for good. */
  public boolean isUp() {
    return downMillis == NOT;
  }

  private void forget() {
    downMillis = NOT;
    upMillis = NOT;
    meant = false;
  }

  /** Called often; true once when it has been held long enough. */
  public boolean tick(long millis) {
    if (upMillis != NOT) {
      if (millis - upMillis >= REPEAT_MILLIS) {
        forget();
      }
      return false;
    }
    boolean enough = meant && downMillis != NOT && millis - downMillis >= HOLD_MILLIS;
    meant &= !enough;
    return enough;
  }
}
