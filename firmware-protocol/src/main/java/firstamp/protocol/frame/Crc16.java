package firstamp.protocol.frame;

import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.ByteOrder;

/**
 * CRC-16, polynomial 0x1021, initial value 0xFFFF, not reflected, no final xor.
 *
 * <p>The remainder modulo P = x^16 + x^12 + x^5 + 1, without a table: of a power of P whose
 * exponent k is a power of two, only four terms are left, x^16k + x^12k + x^5k + 1, and each
 * multiple of x^16k is replaced by the three lower ones.
 */
final class Crc16 {
  /** Two bytes that leave the initial value 0xFFFF behind them. */
  private static final long BEFORE = 0x84CF;

  private static final VarHandle EIGHT_BYTES =
      MethodHandles.byteArrayViewVarHandle(long[].class, ByteOrder.BIG_ENDIAN);

  private Crc16() {}

  static int of(byte[] bytes, int offset, int length) {
    // The remainder so far, its highest word first.
    long d = 0;
    long c = 0;
    long b = 0;
    long a = BEFORE;
    int at = offset;
    int end = offset + length;
    for (; (end - at & 7) != 0; at++) {
      b = a >>> 56;
      a = a << 8 | bytes[at] & 0xFF;
    }
    // Modulo P^16: x^256 = x^192 + x^80 + 1.
    for (; at < end; at += 8) {
      long over = d;
      d = c ^ over;
      c = b ^ over >>> 48;
      b = a ^ over << 16;
      a = (long) EIGHT_BYTES.get(bytes, at) ^ over;
    }
    // Modulo P^8: x^128 = x^96 + x^40 + 1, where x^96 times the word carries into itself.
    d ^= d >>> 32;
    c ^= d << 32 ^ d >>> 24;
    b ^= d << 40 ^ d;
    c ^= c >>> 32;
    b ^= c << 32 ^ c >>> 24;
    a ^= c << 40 ^ c;
    a ^= lower(b, 4);
    a = a & 0xFFFF_FFFFL ^ lower(a >>> 32, 2) & 0xFFFF_FFFFL;
    a = a & 0xFFFF ^ lower(a >>> 16, 1) & 0xFFFF;
    return (int) lower(a, 1) & 0xFFFF;
  }

  /** What {@code high} x^16k leaves modulo P^k; only the lowest 16k bits count. */
  private static long lower(long high, int k) {
    // What the lower terms carry beyond x^16k is taken along at once.
    long all = high ^ high >>> 4 * k ^ high >>> 8 * k ^ high >>> 12 * k ^ high >>> 11 * k;
    return all << 12 * k ^ all << 5 * k ^ all;
  }
}
