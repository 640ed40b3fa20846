package firstamp.analysis.statistics;

import java.util.ArrayList;
import java.util.List;

/**
 * Which of several means differ, all pairs judged at once, so that many comparisons do not find a
 * change by chance (J. W. Tukey's honestly significant difference; unequal counts after C. Y.
 * Kramer, Biometrics 12, 1956).
 *
 * @param pairs each with each, the earlier first
 */
public record Tukey(List<Pair> pairs) {
  /** Copies the list. */
  public Tukey {
    pairs = List.copyOf(pairs);
  }

  /**
   * Two of the groups.
   *
   * @param one place of the first in the list of groups
   * @param other place of the second
   * @param difference second mean less the first
   * @param plusMinus half-width of its 95 % interval, all pairs together
   * @param p probability by chance
   */
  public record Pair(int one, int other, double difference, double plusMinus, double p) {
    /** Whether chance alone would show it less than once in twenty. */
    public boolean significant() {
      return p < Welch.LEVEL;
    }
  }

  /**
   * Compares.
   *
   * @param groups at least two values each
   * @return null for fewer than two groups, a group that is too small, or no scatter at all
   */
  public static Tukey of(List<double[]> groups) {
    int count = groups.size();
    Moments[] moments = new Moments[count];
    double squares = 0;
    int values = 0;
    for (int k = 0; k < count; k++) {
      moments[k] = Moments.of(groups.get(k));
      if (moments[k].count() < 2) {
        return null;
      }
      values += moments[k].count();
      squares += moments[k].deviation() * moments[k].deviation() * (moments[k].count() - 1);
    }
    double degrees = values - (double) count;
    if (count < 2 || !(squares > 0)) {
      return null;
    }
    double mean = squares / degrees;
    double most = StudentizedRange.quantile(Welch.LEVEL, count, degrees);
    List<Pair> pairs = new ArrayList<>();
    for (int one = 0; one < count; one++) {
      for (int other = one + 1; other < count; other++) {
        double unsure =
            Math.sqrt(mean / 2 * (1.0 / moments[one].count() + 1.0 / moments[other].count()));
        double difference = moments[other].mean() - moments[one].mean();
        double p = StudentizedRange.above(Math.abs(difference) / unsure, count, degrees);
        pairs.add(new Pair(one, other, difference, most * unsure, p));
      }
    }
    return new Tukey(pairs);
  }
}
