package firstamp.log;

/**
 * Prediction in whole numbers: values to errors, and errors back to values.
 *
 * <p>Each segment is on its own: what lies before its first value counts as equal to the segment's
 * start value. Predictions are 32-bit sums, rounded to the nearest whole number.
 */
final class Recursion {
  private static final int HALF = 1 << PredictorBank.POINT - 1;
  private static final long HALVES = (long) HALF << 32 | HALF;

  private final PredictorBank bank;
  private final Companion companion;
  private final long[][] pairs;
  private final int[] sums;
  private final int longestSegment;
  private int[] history;
  private long[] x;

  Recursion(PredictorBank bank, Companion companion, int longestSegment) {
    this.bank = bank;
    this.companion = companion;
    this.pairs = new long[bank.size()][];
    for (int p = 0; p < pairs.length; p++) {
      pairs[p] = pairs(bank.own()[p]);
    }
    this.sums = new int[longestSegment];
    this.longestSegment = longestSegment;
  }

  /**
   * Two neighbouring coefficients in one number: a product with one value then gives a term of the
   * next prediction (low half) and one of the prediction after it (high half).
   */
  private static long[] pairs(int[] own) {
    long[] pairs = new long[own.length + 1];
    for (int i = 0; i <= own.length; i++) {
      long low = i == 0 ? 0 : own[i - 1];
      long high = i == own.length ? 0 : own[i];
      pairs[i] = low + (high << 32);
    }
    return pairs;
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
    companionSums(new Companion.Segment(begin, end), end);
    for (int from = begin; from < end; from += PredictorBank.BLOCK) {
      int length = Math.min(PredictorBank.BLOCK, end - from);
      int[] own = bank.own()[bank.choice()[from / PredictorBank.BLOCK]];
      int at = from - begin;
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

  /** Intercepts and the companion's share of every prediction. */
  private void companionSums(Companion.Segment segment, int end) {
    int begin = segment.begin();
    for (int from = begin; from < end; from += PredictorBank.BLOCK) {
      int to = Math.min(end, from + PredictorBank.BLOCK);
      int predictor = bank.choice()[from / PredictorBank.BLOCK];
      java.util.Arrays.fill(sums, from - begin, to - begin, bank.intercepts()[predictor]);
      int[] joint = bank.joint()[predictor];
      int j = 0;
      for (; j + 4 <= joint.length; j += 4) {
        companion.add4(sums, from, to, j, joint, segment);
      }
      for (; j < joint.length; j++) {
        companion.add(sums, from, to, j, joint[j], segment);
      }
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
    companionSums(segment, end);
    if (x == null) {
      x = new long[PredictorBank.MOST_OWN + longestSegment];
    }
    java.util.Arrays.fill(x, 0, PredictorBank.MOST_OWN, start);
    for (int from = begin; from < end; from += PredictorBank.BLOCK) {
      int to = Math.min(end, from + PredictorBank.BLOCK);
      long[] pair = pairs[bank.choice()[from / PredictorBank.BLOCK]];
      int at = from - begin;
      if (pair.length == 1) {
        for (int k = at; k < to - begin; k++) {
          values[begin - origin + k] = errors[k] + (sums[k] + HALF >> PredictorBank.POINT) + base;
        }
        // Only the last ones are looked back at.
        for (int k = Math.max(at, to - begin - PredictorBank.MOST_OWN); k < to - begin; k++) {
          x[PredictorBank.MOST_OWN + k] = values[begin - origin + k] - base;
        }
      } else {
        recur(pair, errors, at, to - begin, base, values, begin - origin);
      }
    }
  }

  private void recur(
      long[] pair, int[] errors, int from, int to, int base, int[] values, int place) {
    int order = pair.length - 1;
    long ofLast = pair[1];
    long ofOlder = order > 1 ? pair[2] : 0;
    long between = pair[0] >> 32;
    int first = PredictorBank.MOST_OWN + from;
    // The two latest values are held here and come last into the sum: all else can go ahead.
    long last = x[first - 1];
    long older = x[first - 2];
    int k = from;
    for (; k + 2 <= to; k += 2) {
      int o = PredictorBank.MOST_OWN + k;
      long sum = HALVES + sums[k] + ((long) sums[k + 1] << 32);
      int i = order;
      for (; i >= 6; i -= 4) {
        sum +=
            pair[i] * x[o - i]
                + pair[i - 1] * x[o - i + 1]
                + (pair[i - 2] * x[o - i + 2] + pair[i - 3] * x[o - i + 3]);
      }
      for (; i >= 3; i--) {
        sum += pair[i] * x[o - i];
      }
      sum += ofOlder * older;
      sum += ofLast * last;
      int low = (int) sum;
      older = errors[k] + (low >> PredictorBank.POINT);
      int high = (int) (sum - low >> 32) + (int) (between * older);
      last = errors[k + 1] + (high >> PredictorBank.POINT);
      x[o] = older;
      x[o + 1] = last;
      values[place + k] = (int) older + base;
      values[place + k + 1] = (int) last + base;
    }
    if (k < to) {
      int o = PredictorBank.MOST_OWN + k;
      int sum = HALF + sums[k];
      for (int i = 1; i <= order; i++) {
        sum += (int) pair[i] * (int) x[o - i];
      }
      x[o] = errors[k] + (sum >> PredictorBank.POINT);
      values[place + k] = (int) x[o] + base;
    }
  }
}
