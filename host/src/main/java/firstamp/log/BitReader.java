package firstamp.log;

/** Bits one after another, lowest first; beyond the end an {@link IndexOutOfBoundsException}. */
final class BitReader {
  private final byte[] data;
  private final int end;
  private int place;
  private long held;
  private int bits;

  BitReader(byte[] data, int offset) {
    this(data, offset, data.length);
  }

  BitReader(byte[] data, int offset, int end) {
    this.data = data;
    this.place = offset;
    this.end = end;
  }

  int take(int width) {
    while (bits < width) {
      if (place >= end) {
        throw new IndexOutOfBoundsException("bits end at byte " + end);
      }
      held |= (data[place++] & 0xffL) << bits;
      bits += 8;
    }
    int value = (int) (held & (1L << width) - 1);
    held >>>= width;
    bits -= width;
    return value;
  }

  /** Whether every byte was used. */
  boolean over() {
    return place == end && bits < 8;
  }
}
