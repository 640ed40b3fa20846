package firstamp.log.code;

/** Fixed-width whole numbers packed into bytes, lowest bit first. */
public final class Bits {
  private Bits() {}

  /** Bits needed for a value of 0 or more. */
  static int width(int highest) {
    return 32 - Integer.numberOfLeadingZeros(highest);
  }

  public static int bytes(int count, int width) {
    return (int) (((long) count * width + 7) / 8);
  }

  public static void pack(
      int[] values, int from, int count, int base, int width, byte[] to, int offset) {
    long held = 0;
    int bits = 0;
    int place = offset;
    for (int k = from; k < from + count; k++) {
      held |= (values[k] - base & 0xffff_ffffL) << bits;
      bits += width;
      while (bits >= 8) {
        to[place++] = (byte) held;
        held >>>= 8;
        bits -= 8;
      }
    }
    if (bits > 0) {
      to[place] = (byte) held;
    }
  }

  public static void unpack(
      byte[] from, int offset, int count, int base, int width, int[] to, int start) {
    long held = 0;
    int bits = 0;
    int place = offset;
    long mask = (1L << width) - 1;
    for (int k = start; k < start + count; k++) {
      while (bits < width) {
        held |= (from[place++] & 0xffL) << bits;
        bits += 8;
      }
      to[k] = (int) (held & mask) + base;
      held >>>= width;
      bits -= width;
    }
  }
}
