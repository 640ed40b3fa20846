package firstamp.window;

import firstamp.model.TimeSource;

/** A clock that is turned by hand. */
public final class HandTime implements TimeSource {
  private volatile long nanos = 1_000_000_000L;

  public void pass(long millis) {
    nanos += millis * 1_000_000L;
  }

  @Override
  public long epochMillis() {
    return nanos / 1_000_000L;
  }

  @Override
  public long monotonicNanos() {
    return nanos;
  }
}
