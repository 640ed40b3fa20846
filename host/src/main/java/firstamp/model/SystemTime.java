package firstamp.model;

/** The computer's clock. */
enum SystemTime implements TimeSource {
  INSTANCE;

  @Override
  public long epochMillis() {
    return System.currentTimeMillis();
  }

  @Override
  public long monotonicNanos() {
    return System.nanoTime();
  }
}
