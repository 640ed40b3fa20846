package firstamp.log.code;

/**
 * Values of a block from errors and sums, each predicted from the ones before, with the fastest
 * loop for each number of coefficients. Every value waits for the one before it, so terms that do
 * not depend on the latest values are summed first.
 *
 * @param errors of the segment
 * @param sums intercept and companion's share of every prediction of a block
 * @param base is added to each value that is given out
 * @param values to give out
 * @param x room for the values of a block before base, behind the {@link PredictorBank#MOST_OWN}
 *     before them
 */
record BlockReconstructor(int[] errors, int[] sums, int base, int[] values, long[] x) {
  private static final int MOST = PredictorBank.MOST_OWN;
  private static final int POINT = PredictorBank.POINT;
  private static final int HALF = 1 << POINT - 1;
  private static final long HALVES = (long) HALF << 32 | HALF;

  /** Orders with a loop of their own; others are filled up with coefficients of 0. */
  private static final int[] ORDERS = {0, 4, 8, 12, 16};

  /**
   * Two neighbouring coefficients in one number: a product with one value then gives a term of the
   * next prediction (low half) and one of the prediction after it (high half).
   */
  static long[] pairs(int[] own) {
    int order = own.length;
    for (int k = ORDERS.length - 1; k >= 0 && ORDERS[k] >= own.length; k--) {
      order = ORDERS[k];
    }
    long[] pairs = new long[order + 1];
    for (int i = 0; i <= own.length; i++) {
      long low = i == 0 ? 0 : own[i - 1];
      long high = i == own.length ? 0 : own[i];
      pairs[i] = low + (high << 32);
    }
    return pairs;
  }

  /**
   * Values of a block; the last of them are those before the next block's then.
   *
   * @param at of its first error
   * @param place of its first value
   */
  void block(long[] pair, int at, int place, int length) {
    int order = pair.length - 1;
    if (order > ORDERS[ORDERS.length - 1]) {
      many(pair, at, place, length);
    } else if (order > 4) {
      upTo16(pair, at, place, length);
    } else {
      if (order == 0) {
        none(at, place, length);
      } else {
        upTo4(pair, at, place, length);
      }
      // Only the last ones are looked back at.
      for (int k = Math.max(0, length - MOST); k < length; k++) {
        x[MOST + k] = values[place + k] - base;
      }
    }
    System.arraycopy(x, length, x, 0, MOST);
  }

  private void none(int at, int place, int length) {
    int[] errors = this.errors;
    int[] sums = this.sums;
    int[] values = this.values;
    int base = this.base;
    for (int k = 0; k < length; k++) {
      values[place + k] = errors[at + k] + (sums[k] + HALF >> POINT) + base;
    }
  }

  private void upTo4(long[] pair, int at, int place, int length) {
    int[] errors = this.errors;
    int[] sums = this.sums;
    int[] values = this.values;
    int base = this.base;
    int c1 = (int) pair[1];
    int c2 = (int) pair[2];
    int c3 = (int) pair[3];
    int c4 = (int) pair[4];
    int x1 = (int) x[MOST - 1];
    int x2 = (int) x[MOST - 2];
    int x3 = (int) x[MOST - 3];
    int x4 = (int) x[MOST - 4];
    for (int k = 0; k < length; k++) {
      int sum = sums[k] + HALF + c4 * x4 + c3 * x3 + c2 * x2 + c1 * x1;
      x4 = x3;
      x3 = x2;
      x2 = x1;
      x1 = errors[at + k] + (sum >> POINT);
      values[place + k] = x1 + base;
    }
  }

  private void upTo16(long[] pair, int at, int place, int length) {
    int[] errors = this.errors;
    int[] sums = this.sums;
    int[] values = this.values;
    int base = this.base;
    long[] x = this.x;
    boolean above8 = pair.length > 9;
    boolean above12 = pair.length > 13;
    long p1 = pair[1];
    long p2 = pair[2];
    long p3 = pair[3];
    long p4 = pair[4];
    long p5 = pair[5];
    long p6 = pair[6];
    long p7 = pair[7];
    long p8 = pair[8];
    long p9 = above8 ? pair[9] : 0;
    long p10 = above8 ? pair[10] : 0;
    long p11 = above8 ? pair[11] : 0;
    long p12 = above8 ? pair[12] : 0;
    long p13 = above12 ? pair[13] : 0;
    long p14 = above12 ? pair[14] : 0;
    long p15 = above12 ? pair[15] : 0;
    long p16 = above12 ? pair[16] : 0;
    int between = (int) (pair[0] >> 32);
    long last = x[MOST - 1];
    long older = x[MOST - 2];
    int twos = length & -2;
    for (int k = 0; k < twos; k += 2) {
      long sum = HALVES + sums[k] + ((long) sums[k + 1] << 32);
      if (above8) {
        if (above12) {
          sum +=
              p16 * x[MOST + k - 16]
                  + p15 * x[MOST + k - 15]
                  + (p14 * x[MOST + k - 14] + p13 * x[MOST + k - 13]);
        }
        sum +=
            p12 * x[MOST + k - 12]
                + p11 * x[MOST + k - 11]
                + (p10 * x[MOST + k - 10] + p9 * x[MOST + k - 9]);
      }
      sum += p8 * x[MOST + k - 8] + p7 * x[MOST + k - 7];
      sum += p6 * x[MOST + k - 6] + p5 * x[MOST + k - 5];
      sum += p4 * x[MOST + k - 4] + p3 * x[MOST + k - 3];
      sum += p2 * older;
      sum += p1 * last;
      int low = (int) sum;
      int first = errors[at + k] + (low >> POINT);
      int high = (int) (sum - low >> 32) + between * first;
      int second = errors[at + k + 1] + (high >> POINT);
      older = first;
      last = second;
      x[MOST + k] = older;
      x[MOST + k + 1] = last;
      values[place + k] = first + base;
      values[place + k + 1] = second + base;
    }
    if (twos < length) {
      one(pair, at, place, twos);
    }
  }

  private void many(long[] pair, int at, int place, int length) {
    int twos = length & -2;
    for (int k = 0; k < twos; k += 2) {
      long sum = HALVES + sums[k] + ((long) sums[k + 1] << 32);
      for (int i = pair.length - 1; i > 0; i--) {
        sum += pair[i] * x[MOST + k - i];
      }
      int low = (int) sum;
      int first = errors[at + k] + (low >> POINT);
      int high = (int) (sum - low >> 32) + (int) (pair[0] >> 32) * first;
      int second = errors[at + k + 1] + (high >> POINT);
      x[MOST + k] = first;
      x[MOST + k + 1] = second;
      values[place + k] = first + base;
      values[place + k + 1] = second + base;
    }
    if (twos < length) {
      one(pair, at, place, twos);
    }
  }

  private void one(long[] pair, int at, int place, int k) {
    int sum = HALF + sums[k];
    for (int i = 1; i < pair.length; i++) {
      sum += (int) pair[i] * (int) x[MOST + k - i];
    }
    x[MOST + k] = errors[at + k] + (sum >> POINT);
    values[place + k] = (int) x[MOST + k] + base;
  }
}
