package firstamp.account;

import firstamp.analysis.figures.Evidence;
import firstamp.analysis.figures.PowerUpTrend;
import firstamp.analysis.statistics.Moments;
import firstamp.analysis.statistics.Tukey;
import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;

/**
 * Supply and rails of three or more power-ups, or parts of one, on the same calibration: which
 * pairs differ, all judged at once by {@link Tukey} on means of one second.
 *
 * @param figures one per quantity that all of them have
 */
public record MultipleComparison(List<Figure> figures) {
  /** Copies the list. */
  public MultipleComparison {
    figures = List.copyOf(figures);
  }

  /**
   * One quantity.
   *
   * @param key of the figure: {@code steadyA}, {@code steadyV} or {@code finalV}
   * @param rail 1 to 3, 0 = none
   * @param unit SI symbol
   * @param means in the order given
   * @param pairs every pair
   */
  public record Figure(
      String key, int rail, String unit, List<Double> means, List<Tukey.Pair> pairs) {}

  /** Compares all of them. */
  public static MultipleComparison of(List<Evidence> all) {
    List<Figure> figures = new ArrayList<>();
    add(figures, all, "steadyA", 0, "A", PowerUpTrend.SecondMean::amps);
    add(figures, all, "steadyV", 0, "V", PowerUpTrend.SecondMean::volts);
    for (int input = 1; input <= 3; input++) {
      int rail = input;
      boolean everywhere =
          all.stream().allMatch(one -> one.rail(rail) != null && one.rail(rail).finalV() != null);
      if (everywhere) {
        add(figures, all, "finalV", rail, "V", mean -> mean.railV().get(rail - 1));
      }
    }
    return new MultipleComparison(figures);
  }

  private static void add(
      List<Figure> figures,
      List<Evidence> all,
      String key,
      int rail,
      String unit,
      ToDoubleFunction<PowerUpTrend.SecondMean> of) {
    List<double[]> groups = new ArrayList<>();
    List<Double> means = new ArrayList<>();
    for (Evidence evidence : all) {
      if (evidence.course() == null) {
        return;
      }
      double[] seconds = evidence.course().steady(of);
      groups.add(seconds);
      means.add(Moments.of(seconds).mean());
    }
    Tukey tukey = Tukey.of(groups);
    if (tukey != null) {
      figures.add(new Figure(key, rail, unit, means, tukey.pairs()));
    }
  }
}
