package firstamp.window;

import firstamp.model.TimeSource;

/** A clock that is turned by hand. */
final class HandTime implements TimeSource {
  private volatile long nanos = 1_000_000_000L;

  void pass(long millis) {
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
