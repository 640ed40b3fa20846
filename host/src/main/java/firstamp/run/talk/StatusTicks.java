package firstamp.run.talk;

/**
 * Finds by the ticks of its status frames that the probe's clock has restarted. Every other frame
 * with a tick may be one that is sent again, and old.
 *
 * <p>Not thread-safe: belongs to the session thread.
 */
final class StatusTicks {
  /** Status frames keep their order, so any step back would do; this is more than one of them. */
  private static final int BACK_MICROS = 1_000_000;

  /**
   * Ticks wrap: a clock that was over half the way looks as if it had gone far ahead. A probe that
   * is away for longer is asked who it is when it comes back, so nothing is found twice.
   */
  private static final int AHEAD_MICROS = 600_000_000;

  private boolean started;
  private int last;

  /** Another clock may follow, nothing is known of it. */
  void beginAnew() {
    started = false;
  }

  /**
   * Takes the tick of the next status.
   *
   * @param tick microseconds modulo 2^32
   * @return whether it cannot be of the same clock as the one before; it is not kept then
   */
  boolean jumped(long tick) {
    int step = (int) tick - last;
    if (started && (step < -BACK_MICROS || step > AHEAD_MICROS)) {
      return true;
    }
    started = true;
    last = (int) tick;
    return false;
  }
}
