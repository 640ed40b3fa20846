package firstamp.log.code;

import java.util.Arrays;

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
public record ReferenceChannel(
    int[] values, int count, int base, int stride, int offset, int taps) {
  /** A companion, its base the mean of its values. */
  public static ReferenceChannel of(int[] values, int count, int stride, int centre, int taps) {
    long sum = 0;
    for (int k = 0; k < count; k++) {
      sum += values[k];
    }
    int mean = count == 0 ? 0 : (int) Math.floorDiv(sum + count / 2, (long) count);
    return new ReferenceChannel(values, count, mean, stride, centre - taps / 2, taps);
  }

  /**
   * What values from one place on see at a tap, not centred. What belongs to another segment of the
   * companion counts as its base: segments can be read alone.
   */
  void seen(int tap, int begin, int length, Segment segment, int[] into) {
    int shift = offset + tap;
    int low = Math.max(0, offset + taps / 2 + stride * segment.begin());
    int high = Math.min(count, offset + taps / 2 + stride * segment.end());
    int first = Math.max(begin, Math.floorDiv(low - shift + stride - 1, stride));
    int last = Math.min(begin + length, Math.floorDiv(high - 1 - shift, stride) + 1);
    if (first >= last) {
      Arrays.fill(into, 0, length, base);
      return;
    }
    Arrays.fill(into, 0, first - begin, base);
    Arrays.fill(into, last - begin, length, base);
    if (stride == 1) {
      System.arraycopy(values, first + shift, into, first - begin, last - first);
    } else {
      for (int k = first, h = first * stride + shift; k < last; k++, h += stride) {
        into[k - begin] = values[h];
      }
    }
  }

  /** The value, centred, that a value sees at a tap; 0 where there is none. */
  int value(int k, int tap) {
    int place = offset + tap + k * stride;
    return place < 0 || place >= count ? 0 : values[place] - base;
  }

  /** Size of the largest centred value. */
  long highest() {
    MinMax range = MinMax.of(values, count);
    return Math.max((long) range.highest() - base, (long) base - range.lowest());
  }

  /** Values of the series that are coded on their own. */
  record Segment(int begin, int end) {}
}
