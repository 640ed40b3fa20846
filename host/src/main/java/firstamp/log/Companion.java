package firstamp.log;

/**
 * Another channel of the same group that a series is predicted from as well: value {@code k} looks
 * at the companion's values from {@code offset + stride * k} on.
 *
 * @param values the companion's, as they are
 * @param count how many of them there are
 * @param base taken off every value
 * @param stride companion values for each own one
 * @param offset of the first value's first tap
 * @param taps how many of them each value looks at; the middle one is of its own place
 */
record Companion(int[] values, int count, int base, int stride, int offset, int taps) {
  /** A companion, its base the mean of its values. */
  static Companion of(int[] values, int count, int stride, int centre, int taps) {
    long sum = 0;
    for (int k = 0; k < count; k++) {
      sum += values[k];
    }
    int mean = count == 0 ? 0 : (int) Math.floorDiv(sum + count / 2, (long) count);
    return new Companion(values, count, mean, stride, centre - taps / 2, taps);
  }

  /**
   * Adds coefficient times companion to the sums of the values from one place to another.
   *
   * @param to place in the sums of value 0
   */
  void add(int[] sums, int to, int begin, int end, int tap, int coefficient, Segment segment) {
    int shift = offset + tap;
    // What belongs to another segment of the companion counts as 0: segments can be read alone.
    int low = Math.max(0, offset + taps / 2 + stride * segment.begin());
    int high = Math.min(count, offset + taps / 2 + stride * segment.end());
    int first = Math.max(begin, Math.floorDiv(low - shift + stride - 1, stride));
    int last = Math.min(end, Math.floorDiv(high - 1 - shift, stride) + 1);
    if (stride == 1) {
      for (int k = first; k < last; k++) {
        sums[k + to] += coefficient * (values[k + shift] - base);
      }
    } else {
      for (int k = first; k < last; k++) {
        sums[k + to] += coefficient * (values[k * stride + shift] - base);
      }
    }
  }

  /** The same for four taps that follow each other. */
  void add4(int[] sums, int to, int begin, int end, int tap, int[] coefficients, Segment segment) {
    int shift = offset + tap;
    int low = Math.max(0, offset + taps / 2 + stride * segment.begin());
    int high = Math.min(count, offset + taps / 2 + stride * segment.end());
    // Where all four lie inside.
    int first = Math.max(begin, Math.floorDiv(low - shift + stride - 1, stride));
    int last = Math.min(end, Math.floorDiv(high - 4 - shift, stride) + 1);
    if (first >= last) {
      for (int t = 0; t < 4; t++) {
        add(sums, to, begin, end, tap + t, coefficients[tap + t], segment);
      }
      return;
    }
    for (int t = 0; t < 4; t++) {
      add(sums, to, begin, first, tap + t, coefficients[tap + t], segment);
      add(sums, to, last, end, tap + t, coefficients[tap + t], segment);
    }
    int a = coefficients[tap];
    int b = coefficients[tap + 1];
    int c = coefficients[tap + 2];
    int d = coefficients[tap + 3];
    int level = base * (a + b + c + d);
    if (stride > 1) {
      for (int k = first, h = first * stride + shift; k < last; k++, h += stride) {
        sums[k + to] +=
            a * values[h] + b * values[h + 1] + c * values[h + 2] + d * values[h + 3] - level;
      }
      return;
    }
    for (int k = first; k < last; k++) {
      sums[k + to] +=
          a * values[k + shift]
              + b * values[k + shift + 1]
              + c * values[k + shift + 2]
              + d * values[k + shift + 3]
              - level;
    }
  }

  /** The value, centred, that a value sees at a tap; 0 where there is none. */
  int value(int k, int tap) {
    int place = offset + tap + k * stride;
    return place < 0 || place >= count ? 0 : values[place] - base;
  }

  /** Size of the largest centred value. */
  long highest() {
    long highest = 0;
    for (int k = 0; k < count; k++) {
      highest = Math.max(highest, Math.abs((long) values[k] - base));
    }
    return highest;
  }

  /** Values of the series that are coded on their own. */
  record Segment(int begin, int end) {}
}
