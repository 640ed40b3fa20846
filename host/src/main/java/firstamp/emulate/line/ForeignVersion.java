package firstamp.emulate.line;

import java.io.ByteArrayOutputStream;

/** Rewrites a frame so that it is whole but of another protocol version. */
final class ForeignVersion {
  private ForeignVersion() {}

  /**
   * @param line one frame with its delimiter
   */
  static byte[] of(byte[] line, int version) {
    byte[] plain = plain(line);
    plain[0] = (byte) version;
    int crc = crc(plain, plain.length - 2);
    plain[plain.length - 2] = (byte) crc;
    plain[plain.length - 1] = (byte) (crc >> 8);
    return stuffed(plain);
  }

  private static byte[] plain(byte[] line) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    int at = 0;
    while (at < line.length - 1) {
      int code = line[at++] & 0xFF;
      out.write(line, at, code - 1);
      at += code - 1;
      if (code < 255 && at < line.length - 1) {
        out.write(0);
      }
    }
    return out.toByteArray();
  }

  private static byte[] stuffed(byte[] plain) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    int from = 0;
    for (int i = 0; i <= plain.length; i++) {
      boolean end = i == plain.length;
      if (end || plain[i] == 0) {
        out.write(i - from + 1);
        out.write(plain, from, i - from);
        from = i + 1;
      }
    }
    out.write(0);
    return out.toByteArray();
  }

  /** CRC-16, polynomial 0x1021, initial value 0xFFFF (wire-format.md section 1), bit by bit. */
  private static int crc(byte[] bytes, int length) {
    int crc = 0xFFFF;
    for (int i = 0; i < length; i++) {
      crc ^= (bytes[i] & 0xFF) << 8;
      for (int bit = 0; bit < 8; bit++) {
        crc = (crc & 0x8000) != 0 ? crc << 1 ^ 0x1021 : crc << 1;
      }
      crc &= 0xFFFF;
    }
    return crc;
  }
}
