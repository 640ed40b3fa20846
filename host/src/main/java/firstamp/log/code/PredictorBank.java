package firstamp.log.code;

/**
 * A few linear predictors of one series, and which of them holds in each block of 256 values.
 * Coefficients are whole numbers with 12 bits after the point, so that every reader gets the same
 * predictions.
 *
 * @param intercepts what each predictor adds
 * @param own coefficients of the values before, the latest first
 * @param joint coefficients of the companion's values
 * @param choice predictor of each block
 */
public record PredictorBank(int[] intercepts, int[][] own, int[][] joint, int[] choice) {
  /** Bits after the point of coefficients and predictions. */
  static final int POINT = 12;

  /** Values that share a predictor. */
  static final int BLOCK = 256;

  /** Most own coefficients. */
  static final int MOST_OWN = 32;

  /** Most coefficients of a companion. */
  public static final int MOST_JOINT = 16;

  /** Most predictors. */
  static final int MOST = 16;

  static int blocks(int count) {
    return (count + BLOCK - 1) / BLOCK;
  }

  int size() {
    return intercepts.length;
  }

  /** Bits of a choice in the coded series. */
  int choiceWidth() {
    return Bits.width(size() - 1);
  }

  /** Whether no prediction from values up to this size can leave 32 bits. */
  boolean fits(long highest, long companionHighest) {
    for (int p = 0; p < size(); p++) {
      long sum = Math.abs((long) intercepts[p]) + (1 << POINT);
      for (int c : own[p]) {
        sum += Math.abs((long) c) * highest;
      }
      for (int c : joint[p]) {
        sum += Math.abs((long) c) * companionHighest;
      }
      if (sum >= Integer.MAX_VALUE) {
        return false;
      }
    }
    return true;
  }

  /** Whether every prediction is 0. */
  boolean isNone() {
    return size() == 1 && intercepts[0] == 0 && own[0].length == 0 && joint[0].length == 0;
  }

  /** One predictor that says 0 everywhere. */
  static PredictorBank none(int count) {
    return new PredictorBank(new int[1], new int[1][0], new int[1][0], new int[blocks(count)]);
  }
}
