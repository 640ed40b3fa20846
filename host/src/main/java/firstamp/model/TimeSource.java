package firstamp.model;

/** The only clock: nothing else asks the JDK for the time. Implementations are safe to share. */
public interface TimeSource {
  /** Milliseconds since 1970, for stamps. */
  long epochMillis();

  /** Nanoseconds of a clock that only goes forward, for durations. */
  long monotonicNanos();

  /** The computer's clock. */
  static TimeSource system() {
    return SystemTime.INSTANCE;
  }
}
