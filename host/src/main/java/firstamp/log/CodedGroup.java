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

  /** Head values from which on a second thread pays. */
  private static final int MUCH = 4000;

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
    int[] begin = takenBefore(from);
    int[] end = takenBefore(to);
    CodedSeries.Part[] parts = decode(begin, end);
    int[][] values = new int[parts.length][];
    int[] taken = new int[parts.length];
    for (int channel = 0; channel < parts.length; channel++) {
      values[channel] = parts[channel].values();
      taken[channel] = begin[channel] - parts[channel].origin();
    }
    int seen = 0;
    short[] counts = new short[to - from];
    for (int s = 0; s < stretches.size(); s++) {
      int first = Math.max(from, stretches.offset(s));
      int stop = Math.min(to, stretches.end(s, length));
      if (first < stop) {
        long index = stretches.firstIndex(s) + first - stretches.offset(s);
        seen |= PlanOrder.join(values, taken, index, counts, first - from, stop - first);
      }
    }
    if ((seen & ~HIGHEST) != 0) {
      throw new MalformedChunkException("a conversion is not 0 to " + HIGHEST);
    }
    return counts;
  }

  private CodedSeries.Part[] decode(int[] from, int[] to) throws MalformedChunkException {
    CodedSeries.Part[] parts = new CodedSeries.Part[series.length];
    int head = Channel.H.ordinal();
    if (to[head] - from[head] < MUCH) {
      decode(parts, from, to, 0, series.length);
      return parts;
    }
    // Head and meter are half of everything, and neither needs one of the others.
    ForkJoinTask<Void> half =
        ForkJoinPool.commonPool()
            .submit(
                () -> {
                  decode(parts, from, to, head, series.length);
                  return null;
                });
    try {
      decode(parts, from, to, 0, head);
    } finally {
      half.quietlyJoin();
    }
    for (Throwable failed = half.getException(); failed != null; failed = failed.getCause()) {
      if (failed instanceof MalformedChunkException malformed) {
        throw malformed;
      }
      if (failed.getCause() == null) {
        throw new IllegalStateException("decoding failed", failed);
      }
    }
    return parts;
  }

  /** From the last channel on: what a meter needs of the head is then there for the head too. */
  private void decode(CodedSeries.Part[] parts, int[] from, int[] to, int first, int end)
      throws MalformedChunkException {
    for (int channel = end - 1; channel >= first; channel--) {
      parts[channel] =
          series[channel] == null
              ? new CodedSeries.Part(new int[0], 0)
              : series[channel].part(from[channel], to[channel]);
    }
  }
}
