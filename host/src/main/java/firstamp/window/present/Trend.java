package firstamp.window.present;

import firstamp.trend.Course;
import firstamp.trend.TimeCourse;

/** Whether a quantity rises, stands or falls, as a word that can be taken in at a glance. */
enum Trend {
  /** It goes up. */
  RISING("trend.rising"),
  /** It stays. */
  STEADY("trend.steady"),
  /** It goes down. */
  FALLING("trend.falling");

  /** Slow changes show in means this long, clear of noise and of speech. */
  private static final int PART_MS = 600;

  /** Whole periods at 50 and 60 Hz. */
  private static final int NEWEST_PART_MS = 100;

  private static final double MATTERS = 0.01;

  /** In short means only what is far beyond ripple counts. */
  private static final double NEWEST_MATTERS = 0.05;

  private final String key;

  Trend(String key) {
    this.key = key;
  }

  String key() {
    return key;
  }

  /**
   * From the last 0.3 s where that moves fast, else from the last 1.8 s: three means each.
   *
   * <p>It moves when both steps go the same way and together exceed a share of the value (1 %; 5 %
   * in the short ones) or {@code atLeast}, whichever is more, so that noise and a single step do
   * not make the word flicker. The short ones are what tells that volts fall just after the switch
   * has opened, where the long ones still hold what stood before.
   *
   * @return null while there is not enough to judge by
   */
  static Trend of(TimeCourse course, Course.Quantity quantity, double nowMs, double atLeast) {
    Trend slow = of(course, quantity, nowMs, atLeast, PART_MS, MATTERS);
    if (slow == null) {
      return null;
    }
    Trend newest = of(course, quantity, nowMs, atLeast, NEWEST_PART_MS, NEWEST_MATTERS);
    return newest == null || newest == STEADY ? slow : newest;
  }

  private static Trend of(
      TimeCourse course,
      Course.Quantity quantity,
      double nowMs,
      double atLeast,
      int partMs,
      double share) {
    float[] low = new float[3];
    float[] high = new float[3];
    float[] mean = new float[3];
    course.columns(quantity, nowMs - 3 * partMs, nowMs, 3, low, high, mean);
    double first = mean[1] - mean[0];
    double second = mean[2] - mean[1];
    double whole = mean[2] - mean[0];
    if (!Double.isFinite(whole) || !Double.isFinite(first)) {
      return null;
    }
    double matters = Math.max(atLeast, share * Math.abs(mean[2]));
    if (Math.abs(whole) <= matters || first * second < 0) {
      return STEADY;
    }
    return whole > 0 ? RISING : FALLING;
  }
}
