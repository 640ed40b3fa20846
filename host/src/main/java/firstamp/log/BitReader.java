package firstamp.log;

/** Bits one after another, lowest first; beyond the end an {@link IndexOutOfBoundsException}. */
final class BitReader {
  private final byte[] data;
  private int place;
  private long held;
  private int bits;

  BitReader(byte[] data, int offset) {
    this.data = data;
    this.place = offset;
  }

  int take(int width) {
    while (bits < width) {
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
    return place == data.length && bits < 8;
  }
}
