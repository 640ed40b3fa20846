package firstamp.protocol.frame;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;

final class CobsTest {
  /** Long enough for several longest codes. */
  private static final int LONGEST = 900;

  private final Random random = new Random(254);

  @Test
  void whatWasEncodedComesBack() {
    for (int round = 0; round < 20_000; round++) {
      byte[] plain = bytes(random.nextInt(LONGEST), 1 + random.nextInt(400));
      byte[] encoded = new byte[Cobs.longestEncoded(plain.length)];
      int length = Cobs.encode(plain, 0, plain.length, encoded, 0);
      byte[] back = new byte[plain.length];
      assertThat(Cobs.decode(encoded, 0, length, back, back.length)).isEqualTo(plain.length);
      assertThat(back).isEqualTo(plain);
    }
  }

  @Test
  void anyBytesDecodeAsByteByByte() {
    int bad = 0;
    for (int round = 0; round < 50_000; round++) {
      byte[] in = bytes(random.nextInt(LONGEST), 1 + random.nextInt(400));
      int length = in.length;
      if (random.nextBoolean()) {
        byte[] encoded = new byte[Cobs.longestEncoded(in.length)];
        length = Cobs.encode(in, 0, in.length, encoded, 0);
        in = encoded;
        if (length > 0 && random.nextBoolean()) {
          in[random.nextInt(length)] = (byte) random.nextInt(256);
        }
      }
      int offset = Math.min(length, random.nextInt(4) / 3);
      int capacity = random.nextBoolean() ? LONGEST + 8 : random.nextInt(LONGEST);
      byte[] expected = new byte[capacity];
      int expectedBytes = byteByByte(in, offset, length - offset, expected);
      byte[] out = new byte[capacity];
      int outBytes = Cobs.decode(in, offset, length - offset, out, capacity);
      assertThat(outBytes).as("round %d", round).isEqualTo(expectedBytes);
      if (outBytes == Cobs.BAD) {
        bad++;
      } else {
        assertThat(Arrays.copyOf(out, outBytes)).isEqualTo(Arrays.copyOf(expected, outBytes));
      }
    }
    assertThat(bad).isBetween(10_000, 40_000);
  }

  /** Random bytes with a zero in so many; 1 = nothing but zeros. */
  private byte[] bytes(int length, int zeroIn) {
    byte[] bytes = new byte[length];
    for (int i = 0; i < length; i++) {
      bytes[i] = random.nextInt(zeroIn) == 0 ? 0 : (byte) (1 + random.nextInt(255));
    }
    return bytes;
  }

  private static int byteByByte(byte[] in, int offset, int length, byte[] out) {
    int written = 0;
    int left = 0;
    boolean zeroNext = false;
    for (int i = offset; i < offset + length; i++) {
      int value = in[i] & 0xFF;
      boolean isCode = left == 0;
      if (isCode && value == 0) {
        return Cobs.BAD;
      }
      if (!isCode || zeroNext) {
        if (written == out.length) {
          return Cobs.BAD;
        }
        out[written++] = isCode ? 0 : in[i];
      }
      if (isCode) {
        left = value - 1;
        zeroNext = value < 0xFF;
      } else {
        left--;
      }
    }
    return left == 0 ? written : Cobs.BAD;
  }
}
