package firstamp.protocol.frame;

import java.util.ArrayList;
import java.util.List;

/** Bytes in the order of the line, put together without the codec. */
final class Bytes {
  private final List<Byte> list = new ArrayList<>();

  void little(long value, int width) {
    for (int i = 0; i < width; i++) {
      list.add((byte) (value >> 8 * i));
    }
  }

  byte[] array() {
    byte[] bytes = new byte[list.size()];
    for (int i = 0; i < bytes.length; i++) {
      bytes[i] = list.get(i);
    }
    return bytes;
  }
}
