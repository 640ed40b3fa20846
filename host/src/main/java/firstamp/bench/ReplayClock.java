package firstamp.bench;

import firstamp.model.TimeSource;

/** Position of a replay: played at a speed, held, stepped, moved. Safe to share. */
final class ReplayClock {
  private final TimeSource time;
  private double beginMs;
  private double endMs;
  private double baseMs;
  private long baseNanos;
  private double factor;
  private boolean held;

  ReplayClock(TimeSource time, double factor) {
    this.time = time;
    this.factor = factor;
  }

  /** What can be played; the position goes to its start. */
  synchronized void over(double begin, double end) {
    beginMs = begin;
    endMs = end;
    moveTo(begin);
  }

  synchronized double position() {
    if (held) {
      return baseMs;
    }
    if (Double.isInfinite(factor)) {
      return endMs;
    }
    return Math.min(endMs, baseMs + (time.monotonicNanos() - baseNanos) / 1e6 * factor);
  }

  synchronized void moveTo(double ms) {
    baseMs = Math.max(beginMs, Math.min(endMs, ms));
    baseNanos = time.monotonicNanos();
    if (Double.isInfinite(factor) && ms < endMs) {
      held = true; // At full speed the end is reached at once: who looks at a moment stays there.
    }
  }

  synchronized void speed(double next) {
    double at = position();
    factor = next;
    baseMs = at;
    baseNanos = time.monotonicNanos();
  }

  synchronized void hold(boolean hold) {
    double at = position();
    held = hold;
    baseMs = at;
    baseNanos = time.monotonicNanos();
  }

  synchronized void step(double ms) {
    double at = position();
    held = true;
    baseMs = Math.max(beginMs, Math.min(endMs, at + ms));
  }

  synchronized double factor() {
    return factor;
  }

  synchronized boolean held() {
    return held;
  }
}
