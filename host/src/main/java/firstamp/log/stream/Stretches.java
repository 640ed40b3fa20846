package firstamp.log.stream;

import firstamp.log.code.Deinterleaver;
import java.util.Arrays;

/**
 * Where in a group of elements the conversion index does not simply go on: after a gap or a restart
 * of the probe. The first entry is always at offset 0.
 */
public final class Stretches {
  private int[] offsets = new int[4];
  private long[] indices = new long[4];
  private int size;

  public void add(int offset, long firstIndex) {
    if (size == offsets.length) {
      offsets = Arrays.copyOf(offsets, 2 * size);
      indices = Arrays.copyOf(indices, 2 * size);
    }
    offsets[size] = offset;
    indices[size++] = firstIndex;
  }

  public int size() {
    return size;
  }

  public int offset(int k) {
    return offsets[k];
  }

  /** Offset after the last element of a stretch, in a group of this length. */
  public int end(int k, int length) {
    return k + 1 < size ? offsets[k + 1] : length;
  }

  public long firstIndex(int k) {
    return indices[k];
  }

  /** Values of each channel before an offset, in a group of conversions of this length. */
  int[] valuesBefore(int offset, int length) {
    int[] before = new int[Deinterleaver.CHANNELS];
    for (int s = 0; s < size && offsets[s] < offset; s++) {
      long end = indices[s] + Math.min(offset, end(s, length)) - offsets[s];
      for (int channel = 0; channel < before.length; channel++) {
        before[channel] += Deinterleaver.count(channel, indices[s], end);
      }
    }
    return before;
  }

  /** Takes back every stretch that begins at this offset or later. */
  void truncate(int offset) {
    while (size > 0 && offsets[size - 1] >= offset) {
      size--;
    }
  }
}
