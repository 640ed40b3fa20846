package firstamp.window;

import firstamp.session.Course;
import firstamp.session.TimeCourse;

/** Whether a quantity rises, stands or falls, as a word that can be taken in at a glance. */
enum Trend {
  /** It goes up. */
  RISING("trend.rising"),
  /** It stays. */
  STEADY("trend.steady"),
  /** It goes down. */
  FALLING("trend.falling");

  private static final int PART_MS = 600;

  private final String key;

  Trend(String key) {
    this.key = key;
  }

  String key() {
    return key;
  }

  /**
   * From the last 1.8 s: three means of 0.6 s each.
   *
   * <p>It moves when both steps go the same way and together exceed 1 % of the value or {@code
   * atLeast}, whichever is more, so that noise and a single step do not make the word flicker.
   *
   * @return null while there is not enough to judge by
   */
  static Trend of(TimeCourse course, Course.Quantity quantity, double nowMs, double atLeast) {
    float[] low = new float[3];
    float[] high = new float[3];
    float[] mean = new float[3];
    course.columns(quantity, nowMs - 3 * PART_MS, nowMs, 3, low, high, mean);
    double first = mean[1] - mean[0];
    double second = mean[2] - mean[1];
    double whole = mean[2] - mean[0];
    if (!Double.isFinite(whole) || !Double.isFinite(first)) {
      return null;
    }
    double matters = Math.max(atLeast, 0.01 * Math.abs(mean[2]));
    if (Math.abs(whole) <= matters || first * second < 0) {
      return STEADY;
    }
    return whole > 0 ? RISING : FALLING;
  }
}
