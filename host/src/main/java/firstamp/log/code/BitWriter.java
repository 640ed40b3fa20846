package firstamp.log.code;

import java.nio.ByteBuffer;
import java.util.Arrays;

/** Bits one after another, lowest first. */
final class BitWriter {
  private byte[] data = new byte[64];
  private int size;
  private long held;
  private int bits;

  void put(int value, int width) {
    held |= (value & 0xffff_ffffL) << bits;
    bits += width;
    while (bits >= 8) {
      if (size == data.length) {
        data = Arrays.copyOf(data, 2 * size);
      }
      data[size++] = (byte) held;
      held >>>= 8;
      bits -= 8;
    }
  }

  int longest() {
    return size + 1;
  }

  void write(ByteBuffer out) {
    out.put(data, 0, size);
    if (bits > 0) {
      out.put((byte) held);
    }
  }
}
