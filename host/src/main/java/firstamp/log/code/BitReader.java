package firstamp.log.code;

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
    if (bits < width && end - place >= 8) {
      // What lies above the bits counted here is read once more, and is the same then.
      held |= LittleEndian.eight(data, place) << bits;
      int bytes = 63 - bits >> 3;
      place += bytes;
      bits += 8 * bytes;
    }
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
