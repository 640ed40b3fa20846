package firstamp.protocol.frame;

import firstamp.protocol.codes.WireCode;

/** Puts little-endian integers into a frame. */
final class PayloadWriter {
  private final byte[] bytes;
  private int at;

  PayloadWriter(byte[] bytes) {
    this.bytes = bytes;
  }

  int position() {
    return at;
  }

  PayloadWriter rewind() {
    at = 0;
    return this;
  }

  PayloadWriter u8(int value) {
    bytes[at++] = (byte) value;
    return this;
  }

  PayloadWriter u16(int value) {
    return u8(value).u8(value >> 8);
  }

  PayloadWriter u32(long value) {
    return u16((int) value).u16((int) (value >> 16));
  }

  PayloadWriter zeros(int count) {
    for (int i = 0; i < count; i++) {
      u8(0);
    }
    return this;
  }

  PayloadWriter bytes(byte[] source) {
    System.arraycopy(source, 0, bytes, at, source.length);
    at += source.length;
    return this;
  }

  PayloadWriter packed(short[] counts, int from, int number) {
    RawBlock.pack(counts, from, number, bytes, at);
    at += RawBlock.packedBytes(number);
    return this;
  }

  PayloadWriter code(WireCode value) {
    return u8(value.code());
  }
}
