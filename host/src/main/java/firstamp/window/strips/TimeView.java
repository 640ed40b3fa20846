package firstamp.window.strips;

/**
 * Which stretch of time the strips show. Mutable, Swing thread only (or one test thread).
 *
 * <p>While it follows, the picture stands still from the closing of the switch until the newest
 * reading reaches the right edge, and moves with it from there on.
 */
public final class TimeView {
  static final double NARROWEST_MS = 200;
  static final double WIDEST_MS = 12 * 3_600_000.0;
  private static final double LEAD_IN = 0.08;

  /** Kept free at the right for the values of the scales. */
  private static final double LEAD_OUT = 0.07;

  /** From this width on the picture moves in steps of a point: between them only its end is new. */
  private static final double WIDE_MS = 600_000;

  private static final double STEPS = 1000;

  private double widthMs = 10_000;
  private double fromMs;
  private boolean follow = true;

  /** Takes note of how far the power-up has come. */
  public void advance(double nowMs, Double closedMs) {
    if (follow) {
      double newest = nowMs - widthMs * (1 - LEAD_OUT);
      if (wide()) {
        double step = widthMs / STEPS;
        newest = Math.floor(newest / step) * step;
      }
      fromMs = closedMs == null ? newest : Math.max(closedMs - LEAD_IN * widthMs, newest);
    }
  }

  public double fromMs() {
    return fromMs;
  }

  public double toMs() {
    return fromMs + widthMs;
  }

  public double widthMs() {
    return widthMs;
  }

  /** Whether a point of the picture stands for so long that hardly anything changes. */
  public boolean wide() {
    return widthMs >= WIDE_MS;
  }

  public boolean follows() {
    return follow;
  }

  public void follow() {
    follow = true;
  }

  void hold() {
    follow = false;
  }

  /**
   * Shows less (factor under 1) or more time around a moment that stays where it is.
   *
   * @param factor of the width
   * @param aroundMs the moment
   */
  public void zoom(double factor, double aroundMs) {
    double wider = Math.max(NARROWEST_MS, Math.min(WIDEST_MS, widthMs * factor));
    fromMs = aroundMs - (aroundMs - fromMs) * (wider / widthMs);
    widthMs = wider;
  }

  /** Moves by a share of the width, to later when positive, and no longer follows. */
  public void pan(double share) {
    follow = false;
    fromMs += share * widthMs;
  }

  /** Shows exactly this stretch and no longer follows. */
  public void show(double from, double to) {
    follow = false;
    widthMs = Math.max(NARROWEST_MS, Math.min(WIDEST_MS, to - from));
    fromMs = from;
  }
}
