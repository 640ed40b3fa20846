package firstamp.study;

import firstamp.model.TimeSource;
import java.util.concurrent.locks.LockSupport;

/** Keeps a replay in step with a clock. */
public final class ReplayPace implements ReplayPowerUp.Pace {
  private final TimeSource time;
  private final double factor;
  private long beginMicros = -1;
  private long beginNanos;

  /**
   * A pace.
   *
   * @param time the computer's clock
   * @param factor 1 = as it was; infinite = no waiting
   */
  public ReplayPace(TimeSource time, double factor) {
    this.time = time;
    this.factor = factor;
  }

  @Override
  public boolean reach(long micros) {
    if (Double.isInfinite(factor)) {
      return true;
    }
    if (beginMicros < 0) {
      beginMicros = micros;
      beginNanos = time.monotonicNanos();
    }
    long due = beginNanos + (long) ((micros - beginMicros) * 1000 / factor);
    for (long left = due - time.monotonicNanos(); left > 0; left = due - time.monotonicNanos()) {
      LockSupport.parkNanos(left);
      if (Thread.currentThread().isInterrupted()) {
        return false;
      }
    }
    return true;
  }
}
