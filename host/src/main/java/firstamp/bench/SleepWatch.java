package firstamp.bench;

import firstamp.model.TimeSource;

/**
 * Finds out that the computer has slept: between two looks that belong a few milliseconds apart the
 * wall clock has jumped.
 *
 * <p>Somebody may have set the clock by hand: whoever asks must also know that the set is off. Not
 * thread-safe: belongs to the session thread.
 */
public final class SleepWatch {
  /** The session looks every 20 ms; a busy computer may hold it up for a second or two. */
  private static final long JUMP_MILLIS = 5_000;

  private final TimeSource time;
  private long lastEpochMillis;

  public SleepWatch(TimeSource time) {
    this.time = time;
    lastEpochMillis = time.epochMillis();
  }

  /** Restarts: nobody has looked for a while, and what happened meanwhile is no sleep. */
  public void restart() {
    lastEpochMillis = time.epochMillis();
  }

  /** When it went to sleep, by its own clock, if it has slept since the last look; else null. */
  public Long look() {
    long before = lastEpochMillis;
    lastEpochMillis = time.epochMillis();
    return lastEpochMillis - before >= JUMP_MILLIS ? (Long) before : null;
  }
}
