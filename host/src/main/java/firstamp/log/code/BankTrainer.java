package firstamp.log.code;

import java.util.ArrayList;
import java.util.List;

/**
 * Finds a few predictors of which each block of a series takes the best: one is fitted to every
 * stretch of blocks, the few that help most are kept and fitted again to the blocks that chose
 * them.
 *
 * <p>Blocks count by their relative error, so that silence is predicted as well as what is loud.
 */
public final class BankTrainer {
  /**
   * How hard to try.
   *
   * @param own most own coefficients
   * @param most predictors
   * @param stretch blocks that a first predictor is fitted to
   * @param rounds of fitting again
   * @param portion values of a block that are looked at
   * @param step blocks of which one is looked at
   */
  public record Effort(int own, int most, int stretch, int rounds, int portion, int step) {
    /** While recording. */
    public static final Effort LIVE = new Effort(8, 3, 32, 1, 64, 2);

    /** For a few thousand values that hardly follow from each other. */
    public static final Effort SHORT = new Effort(4, 1, 16, 0, 256, 1);

    /** Afterwards. */
    public static final Effort REPACK = new Effort(16, 16, 2, 2, 256, 1);
  }

  private static final int QUARTER = PredictorBank.BLOCK / 4;

  private final Effort effort;
  private final LagProducts moments;
  private final int variables;
  private final int least;
  private final double[][] blocks;
  private final double[] powers;
  private final int count;

  private BankTrainer(int[] x, int count, int shift, ReferenceChannel companion, Effort effort) {
    this.effort = effort;
    this.count = count;
    this.moments = new LagProducts(x, shift, companion, effort.own());
    this.variables = moments.variables();
    this.least = variables - effort.own();
    int number = PredictorBank.blocks(count);
    this.blocks = new double[number][];
    this.powers = new double[number];
    for (int b = 0; b < number; b += effort.step()) {
      int from = Math.max(b * PredictorBank.BLOCK, moments.first());
      int to = Math.min(count, b * PredictorBank.BLOCK + effort.portion());
      if (to - from >= 32) {
        blocks[b] = moments.of(from, to);
        double[] m = blocks[b];
        double n = m[0];
        double mean = m[LagProducts.at(variables, 0)] / n;
        powers[b] = Math.max(0, m[LagProducts.at(variables, variables)] / n - mean * mean);
      }
    }
  }

  /**
   * Predictors for centred values.
   *
   * @param highest size of the values
   */
  static PredictorBank train(
      int[] x, int count, int highest, ReferenceChannel companion, Effort effort) {
    if (count < 4 * PredictorBank.BLOCK || companion == null && noise(x, count)) {
      return PredictorBank.none(count);
    }
    int shift = Math.max(0, 32 - Integer.numberOfLeadingZeros(highest) - 11);
    return new BankTrainer(x, count, shift, companion, effort).train(shift);
  }

  /** Whether neighbours are so unlike that nothing predicts them; a quarter of the values tells. */
  private static boolean noise(int[] x, int count) {
    long square = 0;
    long neighbours = 0;
    long seen = 0;
    for (int from = 1; from + QUARTER <= count; from += PredictorBank.BLOCK) {
      for (int k = from; k < from + QUARTER; k++) {
        square += (long) x[k] * x[k];
        neighbours += (long) x[k] * x[k - 1];
      }
      seen += QUARTER;
    }
    return square < 0.8 * seen && Math.abs(neighbours) < 0.1 * seen;
  }

  private PredictorBank train(int shift) {
    List<int[]> candidates = candidates();
    double[][] bits = new double[candidates.size()][];
    for (int c = 0; c < bits.length; c++) {
      bits[c] = bits(candidates.get(c));
    }
    List<int[]> chosen = new ArrayList<>();
    List<double[]> bitsOfChosen = new ArrayList<>();
    double[] best = new double[blocks.length];
    java.util.Arrays.fill(best, Double.MAX_VALUE);
    double total = Double.MAX_VALUE;
    while (chosen.size() < effort.most()) {
      int winner = -1;
      double least = total;
      for (int c = 0; c < bits.length; c++) {
        double sum = 16.0 * candidates.get(c).length + blocks.length;
        for (int b = 0; b < best.length; b++) {
          sum += Math.min(best[b], bits[c][b]);
        }
        if (sum < least) {
          least = sum;
          winner = c;
        }
      }
      if (winner < 0) {
        break;
      }
      chosen.add(candidates.get(winner));
      bitsOfChosen.add(bits[winner]);
      total = 0;
      for (int b = 0; b < best.length; b++) {
        best[b] = Math.min(best[b], bits[winner][b]);
        total += best[b];
      }
    }
    if (chosen.isEmpty()) {
      return PredictorBank.none(count);
    }
    int[] choice = least(bitsOfChosen);
    for (int round = 0; round < effort.rounds(); round++) {
      refit(chosen, choice);
      choice = choose(chosen);
    }
    return bank(chosen, choice, shift);
  }

  private List<int[]> candidates() {
    List<int[]> candidates = new ArrayList<>();
    for (int from = 0; from < blocks.length; from += effort.stretch()) {
      double[] sum = NormalEquations.empty(variables);
      double floor = 0;
      double values = 0;
      for (int b = from; b < Math.min(blocks.length, from + effort.stretch()); b++) {
        if (blocks[b] != null) {
          double weight = 1 / (powers[b] + 1);
          NormalEquations.add(sum, blocks[b], weight);
          values += blocks[b][0];
          floor += weight * blocks[b][0] * NormalEquations.ROUNDING;
        }
      }
      if (values > 4 * variables) {
        candidates.add(NormalEquations.solve(sum, variables, least, values, floor).coefficients());
      }
    }
    return candidates;
  }

  /** Squared errors of every block under a predictor, 0 for a block that is left out. */
  private double[] errors(int[] coefficients) {
    NormalEquations.Error error = new NormalEquations.Error(variables, coefficients);
    double[] errors = new double[blocks.length];
    for (int b = 0; b < errors.length; b++) {
      if (blocks[b] != null) {
        errors[b] = error.over(blocks[b]);
      }
    }
    return errors;
  }

  /** Bits of every block under a predictor. */
  private double[] bits(int[] coefficients) {
    double[] bits = errors(coefficients);
    for (int b = 0; b < bits.length; b++) {
      if (blocks[b] != null) {
        double error = bits[b] / blocks[b][0];
        bits[b] =
            0.5 * PredictorBank.BLOCK * Math.log(error + NormalEquations.ROUNDING) / Math.log(2);
      }
    }
    return bits;
  }

  private int[] choose(List<int[]> predictors) {
    List<double[]> costs = new ArrayList<>();
    for (int[] predictor : predictors) {
      costs.add(errors(predictor));
    }
    return least(costs);
  }

  /**
   * For each block the predictor of least cost; a block that is left out goes with the one before.
   */
  private int[] least(List<double[]> costs) {
    int[] choice = new int[blocks.length];
    for (int b = 0; b < choice.length; b++) {
      if (blocks[b] == null) {
        choice[b] = b == 0 ? 0 : choice[b - 1];
        continue;
      }
      for (int p = 1; p < costs.size(); p++) {
        if (costs.get(p)[b] < costs.get(choice[b])[b]) {
          choice[b] = p;
        }
      }
    }
    return choice;
  }

  private void refit(List<int[]> predictors, int[] choice) {
    for (int p = 0; p < predictors.size(); p++) {
      NormalEquations.Error before = new NormalEquations.Error(variables, predictors.get(p));
      double[] sum = NormalEquations.empty(variables);
      double floor = 0;
      double values = 0;
      for (int b = 0; b < choice.length; b++) {
        if (blocks[b] != null && choice[b] == p) {
          double n = blocks[b][0];
          double error = before.over(blocks[b]) / n;
          double weight = 1 / (error + NormalEquations.ROUNDING);
          NormalEquations.add(sum, blocks[b], weight);
          values += n;
          floor += weight * n * NormalEquations.ROUNDING;
        }
      }
      if (values > 4 * variables) {
        predictors.set(
            p, NormalEquations.solve(sum, variables, least, values, floor).coefficients());
      }
    }
  }

  private PredictorBank bank(List<int[]> predictors, int[] choice, int shift) {
    int number = predictors.size();
    int[] intercepts = new int[number];
    int[][] own = new int[number][];
    int[][] joint = new int[number][];
    for (int p = 0; p < number; p++) {
      int[] all = predictors.get(p);
      intercepts[p] = all[0] << shift;
      joint[p] = java.util.Arrays.copyOfRange(all, 1, least);
      own[p] = java.util.Arrays.copyOfRange(all, least, all.length);
    }
    return new PredictorBank(intercepts, own, joint, choice);
  }
}
