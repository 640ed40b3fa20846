package firstamp.log;

import firstamp.model.Channel;
import java.util.concurrent.ForkJoinPool;
import java.util.concurrent.ForkJoinTask;

/**
 * The chunks of one group of a raw power-up, as they came out of the file; decoded as far as asked
 * for. Not thread-safe, but decodes with two threads where there is much.
 */
final class CodedGroup {
  private static final int HIGHEST = 1023;
  private static final int MUCH = 64_000;

  private final long position;
  private final int length;
  private final Stretches stretches;
  private final CodedSeries[] series;

  /**
   * Nothing decoded yet.
   *
   * @param length conversions
   * @param series of each channel; null where there is none
   * @throws MalformedChunkException the channels' lengths are not those that the plan asks for
   */
  CodedGroup(long position, int length, Stretches stretches, CodedSeries[] series)
      throws MalformedChunkException {
    this.position = position;
    this.length = length;
    this.stretches = stretches;
    this.series = series;
    int[] needed = takenBefore(length);
    for (int channel = 0; channel < series.length; channel++) {
      int count = series[channel] == null ? 0 : series[channel].count();
      if (count != needed[channel]) {
        throw new MalformedChunkException(
            "channel " + Channel.of(channel) + " has " + count + " values, not " + needed[channel]);
      }
    }
  }

  long position() {
    return position;
  }

  int length() {
    return length;
  }

  Stretches stretches() {
    return stretches;
  }

  /** Values of each channel before an offset. */
  private int[] takenBefore(int offset) {
    int[] taken = new int[PlanOrder.CHANNELS];
    for (int s = 0; s < stretches.size() && stretches.offset(s) < offset; s++) {
      long first = stretches.firstIndex(s);
      long end = first + Math.min(offset, stretches.end(s, length)) - stretches.offset(s);
      for (int channel = 0; channel < taken.length; channel++) {
        taken[channel] += PlanOrder.count(channel, first, end);
      }
    }
    return taken;
  }

  /** The conversions from one offset to another. */
  short[] counts(int from, int to) throws MalformedChunkException {
    int[] taken = takenBefore(from);
    int[] end = takenBefore(to);
    int[][] values = decode(taken, end);
    check(values, taken, end);
    short[] counts = new short[to - from];
    for (int s = 0; s < stretches.size(); s++) {
      int begin = Math.max(from, stretches.offset(s));
      int stop = Math.min(to, stretches.end(s, length));
      if (begin < stop) {
        long index = stretches.firstIndex(s) + begin - stretches.offset(s);
        PlanOrder.join(values, taken, index, counts, begin - from, stop - begin);
      }
    }
    return counts;
  }

  private int[][] decode(int[] from, int[] to) throws MalformedChunkException {
    int[][] values = new int[series.length][];
    int head = Channel.H.ordinal();
    if (to[head] - from[head] < MUCH / 4) {
      decode(values, from, to, 0, series.length);
      return values;
    }
    // Head and meter are half of everything, and neither needs one of the others.
    ForkJoinTask<Void> half =
        ForkJoinPool.commonPool()
            .submit(
                () -> {
                  decode(values, from, to, head, series.length);
                  return null;
                });
    try {
      decode(values, from, to, 0, head);
    } finally {
      half.quietlyJoin();
    }
    Throwable failed = half.getException();
    while (failed != null) {
      if (failed instanceof MalformedChunkException malformed) {
        throw malformed;
      }
      if (failed.getCause() == null) {
        throw new IllegalStateException("decoding failed", failed);
      }
      failed = failed.getCause();
    }
    return values;
  }

  private void decode(int[][] values, int[] from, int[] to, int first, int end)
      throws MalformedChunkException {
    for (int channel = first; channel < end; channel++) {
      values[channel] =
          series[channel] == null ? new int[0] : series[channel].values(from[channel], to[channel]);
    }
  }

  private static void check(int[][] values, int[] from, int[] to) throws MalformedChunkException {
    for (int channel = 0; channel < values.length; channel++) {
      int outside = 0;
      for (int k = from[channel]; k < to[channel]; k++) {
        outside |= values[channel][k];
      }
      if ((outside & ~HIGHEST) != 0) {
        throw new MalformedChunkException(
            "a conversion of channel " + Channel.of(channel) + " is not 0 to " + HIGHEST);
      }
    }
  }
}
