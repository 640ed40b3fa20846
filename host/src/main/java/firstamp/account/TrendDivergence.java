package firstamp.account;

import firstamp.analysis.figures.PowerUpTrend;
import firstamp.model.samples.Scaling;
import java.util.List;

/**
 * The moment from which two traces differ: five values in a row further apart than a tenth of the
 * larger and than a floor (3 mA where the current comes from the fine range, else 20 mA; 0.2 V;
 * common practice, no source), first by readings of the first ten seconds, then by means of
 * seconds.
 */
final class TrendDivergence {
  private static final int IN_A_ROW = 5;
  private static final double SHARE = 0.1;
  private static final double FLOOR_A = 0.02;
  private static final double FINE_FLOOR_A = 0.003;
  private static final double FLOOR_V = 0.2;

  private TrendDivergence() {}

  static Comparison.Parting of(PowerUpTrend before, PowerUpTrend after) {
    if (before == null || after == null) {
      return null;
    }
    Comparison.Parting first = null;
    for (int what = 0; what < 5; what++) {
      Comparison.Parting parting = one(before, after, what);
      if (parting != null && (first == null || parting.atMs() < first.atMs())) {
        first = parting;
      }
    }
    return first;
  }

  private static Comparison.Parting one(PowerUpTrend before, PowerUpTrend after, int what) {
    int common = Math.min(before.start().size(), after.start().size());
    int apart = 0;
    for (int k = 0; k < common; k++) {
      double one = point(before.start().get(k), what);
      double two = point(after.start().get(k), what);
      apart = apart(one, two, what) ? apart + 1 : 0;
      if (apart == IN_A_ROW) {
        return parting(
            what,
            10.0 * (k - IN_A_ROW + 1),
            point(before.start().get(k - IN_A_ROW + 1), what),
            point(after.start().get(k - IN_A_ROW + 1), what));
      }
    }
    return seconds(before.seconds(), after.seconds(), what, common / 100);
  }

  private static Comparison.Parting seconds(
      List<PowerUpTrend.SecondMean> before,
      List<PowerUpTrend.SecondMean> after,
      int what,
      int from) {
    int apart = 0;
    PowerUpTrend.SecondMean[] begin = new PowerUpTrend.SecondMean[2];
    int j = 0;
    for (PowerUpTrend.SecondMean one : before) {
      while (j < after.size() && after.get(j).second() < one.second()) {
        j++;
      }
      if (one.second() < from || j == after.size() || after.get(j).second() != one.second()) {
        continue;
      }
      PowerUpTrend.SecondMean two = after.get(j);
      if (!apart(mean(one, what), mean(two, what), what)) {
        apart = 0;
        continue;
      }
      if (apart++ == 0) {
        begin[0] = one;
        begin[1] = two;
      }
      if (apart == IN_A_ROW) {
        return parting(
            what, 1000.0 * begin[0].second(), mean(begin[0], what), mean(begin[1], what));
      }
    }
    return null;
  }

  private static Comparison.Parting parting(int what, double atMs, double one, double two) {
    String name = what == 0 ? "supply current" : what == 1 ? "supply volts" : "rail";
    return new Comparison.Parting(name, Math.max(0, what - 1), atMs, one, two);
  }

  private static boolean apart(double one, double two, int what) {
    double larger = Math.max(Math.abs(one), Math.abs(two));
    double floorA = larger < Scaling.FINE_HIGHEST_A ? FINE_FLOOR_A : FLOOR_A;
    double floor = what == 0 ? floorA : FLOOR_V;
    return Math.abs(one - two) > Math.max(floor, SHARE * larger);
  }

  private static double point(PowerUpTrend.Point point, int what) {
    return what == 0 ? point.amps() : what == 1 ? point.volts() : point.railV().get(what - 2);
  }

  private static double mean(PowerUpTrend.SecondMean mean, int what) {
    return what == 0 ? mean.amps() : what == 1 ? mean.volts() : mean.railV().get(what - 2);
  }
}
