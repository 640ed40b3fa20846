package firstamp.protocol.frame;

import firstamp.protocol.values.Check;

/** Takes little-endian integers off a payload whose length was checked before. */
final class PayloadReader {
  private final byte[] bytes;
  private int at;

  PayloadReader(byte[] bytes, int offset) {
    this.bytes = bytes;
    this.at = offset;
  }

  int u8() {
    return bytes[at++] & 0xFF;
  }

  int u16() {
    return u8() | u8() << 8;
  }

  int i16() {
    return (short) u16();
  }

  int i32() {
    return u16() | u16() << 16;
  }

  long u32() {
    return i32() & Check.U32;
  }

  /** A flag byte that may only be 0 or 1. */
  boolean flag(int field, String name) {
    int value = u8();
    Check.range(field, name, value, 0, 1);
    return value != 0;
  }

  /** Reserved bytes of a host's message, which must be 0. */
  void zeros(int field, int count) {
    for (int i = 0; i < count; i++) {
      Check.range(field, "reserved", u8(), 0, 0);
    }
  }

  void skip(int count) {
    at += count;
  }
}
