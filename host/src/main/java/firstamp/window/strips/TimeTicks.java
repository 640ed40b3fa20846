package firstamp.window.strips;

import firstamp.window.words.Numbers;
import java.util.Locale;

/** Steps of the time axis and how its times are written. */
final class TimeTicks {
  private static final double[] STEPS_S = {
    0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10, 15, 30, 60, 120, 300, 600, 900, 1800, 3600, 7200,
    10_800
  };

  private TimeTicks() {}

  /**
   * The smallest step that leaves room for its labels.
   *
   * @param widthS seconds shown
   * @param most labels
   */
  static double stepS(double widthS, int most) {
    for (double step : STEPS_S) {
      if (widthS / step <= most) {
        return step;
      }
    }
    return STEPS_S[STEPS_S.length - 1];
  }

  /** A time as written under the axis. */
  static String label(double seconds, double stepS, Numbers numbers) {
    double size = Math.abs(seconds);
    if (stepS < 1) {
      return numbers.fixed(seconds, stepS < 0.1 ? 2 : 1);
    }
    if (size < 60 && stepS < 60) {
      return numbers.fixed(seconds, 0);
    }
    long whole = Math.round(size);
    String clock =
        whole >= 3600
            ? String.format(Locale.ROOT, "%d:%02d:%02d", whole / 3600, whole / 60 % 60, whole % 60)
            : String.format(Locale.ROOT, "%d:%02d", whole / 60, whole % 60);
    return seconds < -1e-9 ? "\u2212" + clock : clock;
  }
}
