package firstamp.emulate;

import firstamp.model.TimeSource;

/** The emulated probe's clock. One thread sets it, any may ask. */
final class SimulatedTime implements TimeSource {
  private final long epochMillis;
  private volatile long nanos;

  SimulatedTime(long epochMillis) {
    this.epochMillis = epochMillis;
  }

  void set(long newNanos) {
    nanos = newNanos;
  }

  long nanos() {
    return nanos;
  }

  @Override
  public long epochMillis() {
    return epochMillis + nanos / 1_000_000;
  }

  @Override
  public long monotonicNanos() {
    return nanos;
  }
}
