package firstamp.run;

import firstamp.model.TimeSource;

/** A clock that a test moves by hand. */
public final class HandTime implements TimeSource {
  private volatile long epochMillis = 1_790_000_000_000L;
  private volatile long nanos = 1;

  @Override
  public long epochMillis() {
    return epochMillis;
  }

  @Override
  public long monotonicNanos() {
    return nanos;
  }

  /** Both clocks go on. */
  public void addMillis(long millis) {
    epochMillis = epochMillis + millis;
    nanos = nanos + millis * 1_000_000;
  }

  /** The wall clock continues alone, as in a computer that sleeps. */
  public void sleepMillis(long millis) {
    epochMillis = epochMillis + millis;
  }
}
