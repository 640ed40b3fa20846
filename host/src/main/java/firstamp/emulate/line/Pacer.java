package firstamp.emulate.line;

import firstamp.model.TimeSource;
import java.util.concurrent.locks.LockSupport;

/** Keeps the emulated probe's time in step with the computer's, or does not. */
public final class Pacer {
  private final Pace pace;
  private final TimeSource wall = TimeSource.system();
  private long originNanos = Long.MIN_VALUE;

  public Pacer(Pace pace) {
    this.pace = pace;
  }

  /** Waits until the computer's clock has come as far; the first call starts it. */
  public void waitFor(long simulatedNanos) {
    if (pace == Pace.MAX) {
      return;
    }
    if (originNanos == Long.MIN_VALUE) {
      originNanos = wall.monotonicNanos() - simulatedNanos;
    }
    long ahead = simulatedNanos - (wall.monotonicNanos() - originNanos);
    while (ahead > 0 && !Thread.currentThread().isInterrupted()) {
      LockSupport.parkNanos(ahead);
      ahead = simulatedNanos - (wall.monotonicNanos() - originNanos);
    }
  }
}
