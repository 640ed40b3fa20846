package firstamp.log;

/**
 * Prediction in whole numbers: values to errors, and errors back to values.
 *
 * <p>Each segment is on its own: what lies before its first value counts as equal to the segment's
 * start value. Predictions are 32-bit sums, rounded to the nearest whole number.
 */
final class Recursion {
  private static final int HALF = 1 << PredictorBank.POINT - 1;

  private final PredictorBank bank;
  private final Companion companion;
  private final long[][] pairs;
  private int[] sums = new int[0];
  private final int longestSegment;
  private int[] history;
  private long[] x;

  Recursion(PredictorBank bank, Companion companion, int longestSegment) {
    this.bank = bank;
    this.companion = companion;
    this.pairs = new long[bank.size()][];
    for (int p = 0; p < pairs.length; p++) {
      pairs[p] = Recurrence.pairs(bank.own()[p]);
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
    if (sums.length < longestSegment) {
      sums = new int[longestSegment];
    }
    java.util.Arrays.fill(history, 0, pad, start);
    System.arraycopy(values, begin, history, pad, end - begin);
    Companion.Segment segment = new Companion.Segment(begin, end);
    for (int from = begin; from < end; from += PredictorBank.BLOCK) {
      int length = Math.min(PredictorBank.BLOCK, end - from);
      int predictor = bank.choice()[from / PredictorBank.BLOCK];
      int[] own = bank.own()[predictor];
      int at = from - begin;
      companionSums(predictor, segment, from, length, at);
      int i = 0;
      for (; i + 4 <= own.length; i += 4) {
        add4(sums, at, length, history, pad + at - 1 - i, own, i);
      }
      for (; i < own.length; i++) {
        add(sums, at, length, history, pad + at - 1 - i, own[i]);
      }
    }
    for (int k = 0; k < end - begin; k++) {
      errors[begin + k] = values[begin + k] - (sums[k] + HALF >> PredictorBank.POINT);
    }
  }

  private static void add4(int[] sums, int at, int n, int[] x, int from, int[] own, int i) {
    int a = own[i];
    int b = own[i + 1];
    int c = own[i + 2];
    int d = own[i + 3];
    for (int k = 0; k < n; k++) {
      sums[at + k] +=
          a * x[from + k] + b * x[from + k - 1] + c * x[from + k - 2] + d * x[from + k - 3];
    }
  }

  private static void add(int[] sums, int at, int n, int[] x, int from, int coefficient) {
    for (int k = 0; k < n; k++) {
      sums[at + k] += coefficient * x[from + k];
    }
  }

  /** Intercept and the companion's share of every prediction of a block, put at a place. */
  private void companionSums(
      int predictor, Companion.Segment segment, int from, int length, int place) {
    java.util.Arrays.fill(sums, place, place + length, bank.intercepts()[predictor]);
    int[] joint = bank.joint()[predictor];
    int j = 0;
    for (; j + 4 <= joint.length; j += 4) {
      companion.add4(sums, place - from, from, from + length, j, joint, segment);
    }
    for (; j < joint.length; j++) {
      companion.add(sums, place - from, from, from + length, j, joint[j], segment);
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
      Companion.Segment segment,
      int end,
      int start,
      int base,
      int[] values,
      int origin) {
    int begin = segment.begin();
    if (x == null) {
      x = new long[PredictorBank.MOST_OWN + PredictorBank.BLOCK];
    }
    if (sums.length < PredictorBank.BLOCK) {
      sums = new int[PredictorBank.BLOCK];
    }
    java.util.Arrays.fill(x, 0, PredictorBank.MOST_OWN, start);
    Recurrence recurrence = new Recurrence(errors, sums, base, values, x);
    for (int from = begin; from < end; from += PredictorBank.BLOCK) {
      int length = Math.min(PredictorBank.BLOCK, end - from);
      int predictor = bank.choice()[from / PredictorBank.BLOCK];
      companionSums(predictor, segment, from, length, 0);
      recurrence.block(pairs[predictor], from - begin, from - origin, length);
    }
  }
}
