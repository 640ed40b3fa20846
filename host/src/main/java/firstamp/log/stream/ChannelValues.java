package firstamp.log.stream;

import firstamp.log.code.Deinterleaver;

/**
 * Conversions of a group, one array per channel, as far as they were decoded.
 *
 * @param stretches of the group
 * @param length conversions of the whole group
 * @param from offset of the first conversion that is here
 * @param to offset behind the last one
 * @param values of each channel
 * @param origins place in the group of the first of each channel's values
 */
public record ChannelValues(
    Stretches stretches, int length, int from, int to, int[][] values, int[] origins) {

  /** All of a group that is in the order of the plan. */
  public static ChannelValues of(Stretches stretches, short[] counts) {
    int[] sizes = stretches.valuesBefore(counts.length, counts.length);
    int[][] values = new int[Deinterleaver.CHANNELS][];
    for (int channel = 0; channel < values.length; channel++) {
      values[channel] = new int[sizes[channel]];
    }
    int[] taken = new int[Deinterleaver.CHANNELS];
    for (int s = 0; s < stretches.size(); s++) {
      int offset = stretches.offset(s);
      int count = stretches.end(s, counts.length) - offset;
      Deinterleaver.split(counts, offset, stretches.firstIndex(s), count, values, taken);
    }
    return new ChannelValues(
        stretches, counts.length, 0, counts.length, values, new int[Deinterleaver.CHANNELS]);
  }

  /** Where each channel's values from an offset on begin. */
  public int[] places(int offset) {
    int[] places = stretches.valuesBefore(offset, length);
    for (int channel = 0; channel < places.length; channel++) {
      places[channel] -= origins[channel];
    }
    return places;
  }

  /** The conversions from one offset to another in the order of the plan. */
  public short[] counts(int begin, int end) {
    int[] places = places(begin);
    short[] counts = new short[end - begin];
    for (int s = 0; s < stretches.size(); s++) {
      int first = Math.max(begin, stretches.offset(s));
      int stop = Math.min(end, stretches.end(s, length));
      if (first < stop) {
        long index = stretches.firstIndex(s) + first - stretches.offset(s);
        Deinterleaver.join(values, places, index, counts, first - begin, stop - first);
      }
    }
    return counts;
  }
}
