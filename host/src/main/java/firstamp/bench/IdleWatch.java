package firstamp.bench;

import firstamp.model.TimeSource;

/**
 * Somebody who was called to the telephone leaves a set on: ten minutes without a key, a pedal, the
 * mouse or a moved clip, then a warning, a minute later off.
 *
 * <p>The time goes by the monotonic clock. {@link #touched} may come from any thread.
 */
public final class IdleWatch {
  /** From the last touch to the warning. */
  static final long WARN_MILLIS = 600_000;

  /** From the last touch to the off. */
  static final long OFF_MILLIS = 660_000;

  private final TimeSource time;
  private volatile long touchedNanos;

  public IdleWatch(TimeSource time) {
    this.time = time;
    touched();
  }

  /** Somebody is there. */
  public void touched() {
    touchedNanos = time.monotonicNanos();
  }

  private long idleMillis() {
    return (time.monotonicNanos() - touchedNanos) / 1_000_000;
  }

  /** Whole seconds until it switches off; null = it is not near. */
  public Integer offInS() {
    long idle = idleMillis();
    return idle < WARN_MILLIS ? null : (int) (Math.max(0, OFF_MILLIS - idle + 999) / 1000);
  }

  /** Whether nobody has been there for so long that it must go off. */
  public boolean over() {
    return idleMillis() >= OFF_MILLIS;
  }
}
