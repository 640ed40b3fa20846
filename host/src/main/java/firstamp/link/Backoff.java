package firstamp.link;

/**
 * When to try again: at once, then after 100 ms, doubled up to 2 s.
 *
 * <p>Pure decision on the time it is handed. Not thread-safe.
 */
public final class Backoff {
  private static final long FIRST_NANOS = 100_000_000L;
  private static final long LONGEST_NANOS = 2_000_000_000L;

  private long waitNanos;
  private long nextNanos;
  private boolean started;

  /** Whether it is time for a try; if so, the next one is put off. */
  public boolean due(long nowNanos) {
    if (started && nowNanos - nextNanos < 0) {
      return false;
    }
    waitNanos =
        started ? Math.min(LONGEST_NANOS, Math.max(FIRST_NANOS, waitNanos * 2)) : FIRST_NANOS;
    started = true;
    nextNanos = nowNanos + waitNanos;
    return true;
  }

  /** The attempt succeeded: start over with the shortest wait next time. */
  public void reset() {
    started = false;
    waitNanos = 0;
  }
}
