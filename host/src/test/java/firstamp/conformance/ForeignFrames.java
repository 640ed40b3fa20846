package firstamp.conformance;

import java.io.ByteArrayOutputStream;

/**
 * Frames of another version, written beside our own encoder: byte stuffing as in Cheshire and
 * Baker, "Consistent Overhead Byte Stuffing", 1999; check sum CRC-16/CCITT with the start FFFF
 * (both from memory, and held by the vectors of the wire format).
 */
final class ForeignFrames {
  private ForeignFrames() {}

  /** The same frame with another first byte and the check sum that belongs to it. */
  static byte[] of(int version, byte[] frame) {
    byte[] plain = plain(frame);
    plain[0] = (byte) version;
    int sum = crc(plain, plain.length - 2);
    plain[plain.length - 2] = (byte) sum;
    plain[plain.length - 1] = (byte) (sum >> 8);
    return stuffed(plain);
  }

  private static byte[] plain(byte[] frame) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    int at = 0;
    while (at < frame.length && frame[at] != 0) {
      int code = frame[at++] & 0xFF;
      for (int k = 1; k < code; k++) {
        out.write(frame[at++]);
      }
      if (code < 0xFF && at < frame.length && frame[at] != 0) {
        out.write(0);
      }
    }
    return out.toByteArray();
  }

  private static byte[] stuffed(byte[] plain) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ByteArrayOutputStream run = new ByteArrayOutputStream();
    for (byte one : plain) {
      if (one == 0) {
        out.write(run.size() + 1);
        out.writeBytes(run.toByteArray());
        run.reset();
      } else {
        run.write(one);
      }
    }
    out.write(run.size() + 1);
    out.writeBytes(run.toByteArray());
    out.write(0);
    return out.toByteArray();
  }

  static int crc(byte[] bytes, int length) {
    int crc = 0xFFFF;
    for (int k = 0; k < length; k++) {
      crc ^= (bytes[k] & 0xFF) << 8;
      for (int bit = 0; bit < 8; bit++) {
        crc = (crc & 0x8000) != 0 ? crc << 1 ^ 0x1021 : crc << 1;
      }
    }
    return crc & 0xFFFF;
  }
}
