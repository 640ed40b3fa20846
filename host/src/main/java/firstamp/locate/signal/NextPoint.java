package firstamp.locate.signal;

import firstamp.locate.odds.Information;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Map;

/**
 * Chooses where to measure next: the most that can be learnt for the least effort.
 *
 * <p>Every point in every mode is tried in thought: the possible answers with their shares under
 * each explanation, and how much uncertainty about the joint they take away on average.
 */
final class NextPoint {
  /** Less than this is not worth going to a point, bit. */
  static final double LEAST_BITS = 0.02;

  private final SignalGraph graph;
  private final Map<String, Reach> reaches;
  private final LossGrid grid;

  NextPoint(SignalGraph graph, Map<String, Reach> reachesByMode, LossGrid grid) {
    this.graph = graph;
    this.reaches = reachesByMode;
    this.grid = grid;
  }

  /**
   * A place to measure.
   *
   * @param point by index
   * @param mode of the switches
   * @param bits that the answer is expected to give
   */
  record Choice(int point, SignalGraph.Mode mode, double bits) {}

  /**
   * What a level can read: one row per group when its fault is before the point, and last a row for
   * "nothing lost there".
   *
   * @param told shares of the readings
   * @param bits uncertainty of each row
   */
  private record Answers(double[][] told, double[] bits) {
    static Answers of(List<double[]> lost, double[] unlost) {
      double[][] told = new double[lost.size() + 1][];
      double[] bits = new double[told.length];
      for (int row = 0; row < told.length; row++) {
        told[row] = row < lost.size() ? lost.get(row) : unlost;
        bits[row] = Information.entropyBits(told[row]);
      }
      return new Answers(told, bits);
    }
  }

  /** The best place, null if none tells anything. */
  Choice best(FaultOdds odds, double sigmaDb) {
    Answers levels = levels(odds, sigmaDb);
    Answers heard = heard(odds);
    Choice best = null;
    double bestScore = 0;
    for (SignalGraph.Mode mode : graph.modes()) {
      Reach reach = reaches.get(mode.name());
      for (int point = 0; point < graph.points().size(); point++) {
        SignalGraph.PathPoint at = graph.points().get(point);
        if (!reach.arrives(point) || at.name().equals(mode.source())) {
          continue;
        }
        Answers answers = at.expectedDbv(mode.name()) == null ? heard : levels;
        double bits = bits(odds, reach.needed(point), answers);
        double score = bits / at.effort();
        if (bits >= LEAST_BITS && score > bestScore * (1 + 1e-9)) {
          bestScore = score;
          best = new Choice(point, mode, bits);
        }
      }
    }
    return best;
  }

  /** What a level at a point is expected to tell, bit. */
  double bits(FaultOdds odds, String mode, int point, double sigmaDb) {
    return bits(odds, reaches.get(mode).needed(point), levels(odds, sigmaDb));
  }

  /** Joints behind a point answer alike wherever they are: one explanation per group, and none. */
  private static double bits(FaultOdds odds, BitSet needed, Answers answers) {
    return Information.gainBits(odds.behind(needed), answers.told(), answers.bits());
  }

  private Answers levels(FaultOdds odds, double sigmaDb) {
    double[][] perLoss = grid.lostAnswers(sigmaDb);
    List<double[]> lost = new ArrayList<>();
    for (FaultOdds.Group group : odds.groups()) {
      double[] mixed = new double[LossGrid.ANSWERS];
      for (int loss = 0; loss < LossGrid.SIZE; loss++) {
        for (int answer = 0; answer < mixed.length; answer++) {
          mixed[answer] += group.lossShares()[loss] * perLoss[loss][answer];
        }
      }
      lost.add(mixed);
    }
    return Answers.of(lost, LossGrid.unlostAnswers(sigmaDb));
  }

  private static Answers heard(FaultOdds odds) {
    double missed = StrictMath.exp(LossGrid.heard(true, true));
    List<double[]> lost = new ArrayList<>();
    for (int group = 0; group < odds.groups().size(); group++) {
      lost.add(new double[] {missed, 1 - missed});
    }
    return Answers.of(lost, new double[] {1 - missed, missed});
  }
}
