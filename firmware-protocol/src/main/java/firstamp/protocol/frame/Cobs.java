package firstamp.protocol.frame;

/**
 * Consistent overhead byte stuffing: takes the zero bytes out of a frame, so that zero can end it.
 * The encoder emits no code after an exact run of 254 bytes at the end; the decoder takes it with
 * and without.
 */
final class Cobs {
  /** What {@link #decode} gives for bytes that are no COBS or do not fit. */
  static final int BAD = -1;

  private static final int LONGEST_CODE = 0xFF;

  private Cobs() {}

  /** Most bytes that a frame of {@code length} bytes takes, delimiter not included. */
  static int longestEncoded(int length) {
    return length + Math.max(1, (length + LONGEST_CODE - 2) / (LONGEST_CODE - 1));
  }

  /** Writes the encoded bytes without a delimiter and returns how many. */
  static int encode(byte[] in, int inOffset, int length, byte[] out, int outOffset) {
    int codeAt = outOffset;
    int write = outOffset + 1;
    int end = inOffset + length;
    for (int read = inOffset; read < end; read++) {
      byte value = in[read];
      if (value != 0) {
        out[write++] = value;
        if (write - codeAt < LONGEST_CODE || read + 1 == end) {
          continue;
        }
      }
      out[codeAt] = (byte) (write - codeAt);
      codeAt = write++;
    }
    out[codeAt] = (byte) (write - codeAt);
    return write - outOffset;
  }

  /**
   * Writes the plain bytes and returns how many, or {@link #BAD}; the input holds no zero byte.
   * What stands behind them in {@code out} is spoilt.
   */
  static int decode(byte[] in, int inOffset, int length, byte[] out, int capacity) {
    int read = inOffset;
    int end = inOffset + length;
    int write = 0;
    while (read < end) {
      // Up to a longest code the plain bytes are the encoded ones behind the first code, with a
      // zero in place of each further code.
      System.arraycopy(in, read + 1, out, write, Math.min(end - read - 1, capacity - write));
      int code;
      do {
        code = in[read] & 0xFF;
        if (code == 0 || code > end - read || code - 1 > capacity - write) {
          return BAD;
        }
        read += code;
        write += code - 1;
        if (code < LONGEST_CODE && read < end) {
          if (write == capacity) {
            return BAD;
          }
          out[write++] = 0;
        }
      } while (code < LONGEST_CODE && read < end);
    }
    return write;
  }
}
