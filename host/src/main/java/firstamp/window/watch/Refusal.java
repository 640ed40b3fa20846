package firstamp.window.watch;

import firstamp.model.TimeSource;

/** Why the last key did nothing: for a while, or until a key does something. Swing thread only. */
final class Refusal {
  /** Long enough to look up from the set and to read two lines twice. */
  static final long SHOWN_NANOS = 10_000_000_000L;

  private final TimeSource time;
  private String why;
  private long sinceNanos;

  Refusal(TimeSource time) {
    this.time = time;
  }

  /** From now on this is shown; null = nothing. */
  void say(String words) {
    why = words;
    sinceNanos = time.monotonicNanos();
  }

  /** What to show now, null = nothing. */
  String now() {
    if (why != null && time.monotonicNanos() - sinceNanos > SHOWN_NANOS) {
      why = null;
    }
    return why;
  }
}
