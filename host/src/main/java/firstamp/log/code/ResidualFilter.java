package firstamp.log.code;

/**
 * Prediction in whole numbers: values to errors, and errors back to values.
 *
 * <p>Each segment is on its own: what lies before its first value counts as equal to the segment's
 * start value. Predictions are 32-bit sums, rounded to the nearest whole number.
 */
final class ResidualFilter {
  private static final int PIECE = 2 * PredictorBank.BLOCK;
  private static final int HALF = 1 << PredictorBank.POINT - 1;

  private final PredictorBank bank;
  private final ReferenceChannel companion;
  private final long[][] pairs;
  private final int[] sums = new int[PIECE];
  private final int longestSegment;
  private int[] history;
  private final int[][] shifted = new int[4][PIECE];
  private final int[] rests = new int[PIECE];
  private long[] x;

  ResidualFilter(PredictorBank bank, ReferenceChannel companion, int longestSegment) {
    this.bank = bank;
    this.companion = companion;
    this.pairs = new long[bank.size()][];
    for (int p = 0; p < pairs.length; p++) {
      pairs[p] = BlockReconstructor.pairs(bank.own()[p]);
    }
    this.longestSegment = longestSegment;
  }

  /** Errors of the centred values of a segment. */
  void errors(int[] values, int begin, int end, int start, int[] errors) {
    if (bank.isNone()) {
      System.arraycopy(values, begin, errors, begin, end - begin);
      return;
    }
    int pad = PredictorBank.MOST_OWN;
    if (history == null) {
      history = new int[pad + longestSegment];
    }
    java.util.Arrays.fill(history, 0, pad, start);
    System.arraycopy(values, begin, history, pad, end - begin);
    ReferenceChannel.Segment segment = new ReferenceChannel.Segment(begin, end);
    int from = begin;
    while (from < end) {
      int predictor = bank.choice()[from / PredictorBank.BLOCK];
      int to = Math.min(end, from + PredictorBank.BLOCK);
      while (to < end
          && to - from < PIECE
          && bank.choice()[to / PredictorBank.BLOCK] == predictor) {
        to = Math.min(end, to + PredictorBank.BLOCK);
      }
      int length = to - from;
      companionSums(predictor, segment, from, length);
      int[] own = bank.own()[predictor];
      for (int i = 0; i < own.length; i += 4) {
        for (int k = 0; k < 4; k++) {
          System.arraycopy(history, pad + from - begin - 1 - i - k, shifted[k], 0, length);
        }
        addFour(own, i, length);
      }
      rest(pad + from - begin, length);
      System.arraycopy(rests, 0, errors, from, length);
      from = to;
    }
  }

  /** Adds four rows, each times its coefficient. */
  private void addFour(int[] coefficients, int i, int length) {
    int[] sums = this.sums;
    int[] x0 = shifted[0];
    int[] x1 = shifted[1];
    int[] x2 = shifted[2];
    int[] x3 = shifted[3];
    int a = coefficients[i];
    int b = i + 1 < coefficients.length ? coefficients[i + 1] : 0;
    int c = i + 2 < coefficients.length ? coefficients[i + 2] : 0;
    int d = i + 3 < coefficients.length ? coefficients[i + 3] : 0;
    for (int k = 0; k < length; k++) {
      sums[k] = sums[k] + a * x0[k] + b * x1[k] + c * x2[k] + d * x3[k];
    }
  }

  private void rest(int at, int length) {
    int[] x = shifted[0];
    System.arraycopy(history, at, x, 0, length);
    int[] sums = this.sums;
    int[] rests = this.rests;
    for (int k = 0; k < length; k++) {
      rests[k] = x[k] - (sums[k] + HALF >> PredictorBank.POINT);
    }
  }

  /** Intercept and the companion's share of every prediction of a piece. */
  private void companionSums(
      int predictor, ReferenceChannel.Segment segment, int from, int length) {
    java.util.Arrays.fill(sums, 0, length, bank.intercepts()[predictor]);
    int[] joint = bank.joint()[predictor];
    for (int j = 0; j < joint.length; j += 4) {
      int level = 0;
      for (int t = j; t < Math.min(joint.length, j + 4); t++) {
        companion.seen(t, from, length, segment, shifted[t - j]);
        level += joint[t];
      }
      level *= companion.base();
      for (int k = 0; k < length; k++) {
        sums[k] -= level;
      }
      addFour(joint, j, length);
    }
  }

  /**
   * Values of a segment from its errors, which begin at 0.
   *
   * @param end of the values that are needed
   * @param base is added to each
   * @param origin place of the array's first value
   */
  void values(
      int[] errors,
      ReferenceChannel.Segment segment,
      int end,
      int start,
      int base,
      int[] values,
      int origin) {
    int begin = segment.begin();
    if (x == null) {
      x = new long[PredictorBank.MOST_OWN + PredictorBank.BLOCK];
    }
    java.util.Arrays.fill(x, 0, PredictorBank.MOST_OWN, start);
    BlockReconstructor recurrence = new BlockReconstructor(errors, sums, base, values, x);
    for (int from = begin; from < end; from += PredictorBank.BLOCK) {
      int length = Math.min(PredictorBank.BLOCK, end - from);
      int predictor = bank.choice()[from / PredictorBank.BLOCK];
      companionSums(predictor, segment, from, length);
      recurrence.block(pairs[predictor], from - begin, from - origin, length);
    }
  }
}
