package firstamp.protocol.frame;

/**
 * Frames, checksum and COBS from their definitions, sharing no code with the codec: what vectors
 * are written with.
 */
final class ReferenceFrames {
  static final int VERSION = 2;

  private ReferenceFrames() {}

  /** A frame before COBS, checksum included. */
  static byte[] frame(int version, int type, int sequence, long tick, byte[] payload) {
    Bytes bytes = new Bytes();
    bytes.little(version, 1);
    bytes.little(type, 1);
    bytes.little(sequence, 2);
    bytes.little(tick, 4);
    for (byte value : payload) {
      bytes.little(value, 1);
    }
    bytes.little(crc(bytes.array()), 2);
    return bytes.array();
  }

  /** CRC-16 1021/FFFF, bit by bit from its definition. */
  static int crc(byte[] bytes) {
    int remainder = 0xFFFF;
    for (byte value : bytes) {
      for (int bit = 7; bit >= 0; bit--) {
        boolean high = (remainder >> 15 & 1) != (value >> bit & 1);
        remainder = remainder << 1 & 0xFFFF;
        if (high) {
          remainder ^= 0x1021;
        }
      }
    }
    return remainder;
  }

  /** COBS by its definition: cut at zeros, and after runs of 254. */
  static byte[] cobs(byte[] plain) {
    Bytes out = new Bytes();
    int at = 0;
    do {
      int end = at;
      while (end < plain.length && plain[end] != 0 && end - at < 254) {
        end++;
      }
      out.little(end - at + 1, 1);
      for (int i = at; i < end; i++) {
        out.little(plain[i], 1);
      }
      boolean zeroTaken = end < plain.length && end - at < 254;
      at = zeroTaken ? end + 1 : end;
      if (zeroTaken && at == plain.length) {
        out.little(1, 1);
      }
    } while (at < plain.length);
    return out.array();
  }
}
