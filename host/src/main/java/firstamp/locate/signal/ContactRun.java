package firstamp.locate.signal;

import firstamp.model.text.Worded;
import java.util.List;

/**
 * Judges a contact from levels: worked several times, or a joint tapped and flexed.
 *
 * <p>A spread over 3 dB, or a trend along the strokes, says dirty contact. Common practice, no
 * source.
 *
 * @param unsteady whether the levels moved
 * @param factor by which the odds of the joint change
 * @param sentence for the person
 */
public record ContactRun(boolean unsteady, double factor, Worded sentence) {
  /** More than this between strokes is a finding, dB. */
  static final double SPREAD_DB = 3;

  /** A straight line through the strokes that explains this share of their scatter is a trend. */
  private static final double TREND_SHARE = 0.8;

  /** A trend of less than this from first to last stroke says nothing, dB. */
  private static final double TREND_DB = 1;

  static final int FEWEST = 3;

  /** Levels after each stroke of a contact. */
  public static ContactRun strokes(String joint, List<Double> levelsDb) {
    needs(levelsDb, FEWEST, "strokes of " + joint);
    double spread = highest(levelsDb) - lowest(levelsDb);
    double slope = slope(levelsDb);
    double along = slope * (levelsDb.size() - 1);
    double share = explained(levelsDb, slope);
    if (spread > SPREAD_DB) {
      return new ContactRun(true, 12, PathWords.of("contact.spread", joint, spread));
    }
    if (levelsDb.size() >= 5 && Math.abs(along) > TREND_DB && share > TREND_SHARE) {
      return new ContactRun(true, 8, PathWords.of("contact.trend", joint, Math.abs(along)));
    }
    return new ContactRun(
        false, 0.3, PathWords.of("contact.steady", joint, spread, levelsDb.size()));
  }

  /** Levels while a joint is left alone and while it is touched. */
  public static ContactRun taps(String joint, List<Double> quietDb, List<Double> touchedDb) {
    needs(quietDb, 2, "levels before touching " + joint);
    needs(touchedDb, 1, "levels while touching " + joint);
    double restless = highest(quietDb) - lowest(quietDb);
    double moved =
        Math.max(highest(touchedDb) - highest(quietDb), lowest(quietDb) - lowest(touchedDb));
    if (moved > SPREAD_DB && moved > 2 * restless) {
      return new ContactRun(true, 20, PathWords.of("tap.moves", joint, moved));
    }
    if (restless > SPREAD_DB) {
      return new ContactRun(false, 1, PathWords.of("tap.restless", joint, restless));
    }
    return new ContactRun(false, 0.5, PathWords.of("tap.nothing", joint));
  }

  private static void needs(List<Double> levels, int fewest, String what) {
    if (levels.size() < fewest || !levels.stream().allMatch(Double::isFinite)) {
      throw PathWords.refusal("figures", what, levels, fewest);
    }
  }

  private static double highest(List<Double> levels) {
    return levels.stream().mapToDouble(Double::doubleValue).max().orElseThrow();
  }

  private static double lowest(List<Double> levels) {
    return levels.stream().mapToDouble(Double::doubleValue).min().orElseThrow();
  }

  private static double mean(List<Double> levels) {
    return levels.stream().mapToDouble(Double::doubleValue).sum() / levels.size();
  }

  private static double slope(List<Double> levels) {
    double middle = (levels.size() - 1) / 2.0;
    double mean = mean(levels);
    double across = 0;
    double square = 0;
    for (int at = 0; at < levels.size(); at++) {
      across += (at - middle) * (levels.get(at) - mean);
      square += (at - middle) * (at - middle);
    }
    return across / square;
  }

  private static double explained(List<Double> levels, double slope) {
    double middle = (levels.size() - 1) / 2.0;
    double mean = mean(levels);
    double whole = 0;
    double line = 0;
    for (int at = 0; at < levels.size(); at++) {
      whole += (levels.get(at) - mean) * (levels.get(at) - mean);
      line += slope * (at - middle) * slope * (at - middle);
    }
    return whole == 0 ? 0 : line / whole;
  }
}
