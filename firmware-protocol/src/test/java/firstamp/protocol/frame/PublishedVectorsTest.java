package firstamp.protocol.frame;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/**
 * Checksum and stuffing against published values; the files in vectors/ name the source of each.
 */
final class PublishedVectorsTest {
  private static final HexFormat HEX = HexFormat.of().withUpperCase();

  @Test
  void checksumMeetsPublishedValues() {
    List<String[]> rows = Vectors.rows("crc.txt");
    assertThat(rows).hasSize(9);
    for (String[] row : rows) {
      byte[] input = HEX.parseHex(row[0].trim());
      int expected = Integer.parseInt(row[1], 16);
      assertThat(Crc16.of(input, 0, input.length)).as("input %s", row[0]).isEqualTo(expected);
      assertThat(ReferenceFrames.crc(input))
          .as("vector writer, input %s", row[0])
          .isEqualTo(expected);
    }
  }

  @Test
  void checksumOfEightBytesAStepEqualsBitByBit() {
    Random random = new Random(11);
    byte[] bytes = new byte[300];
    for (int round = 0; round < 20 * 255; round++) {
      random.nextBytes(bytes);
      int length = round % 255;
      int offset = length % 7;
      byte[] part = Arrays.copyOfRange(bytes, offset, offset + length);
      assertThat(Crc16.of(bytes, offset, length))
          .as("length %d", length)
          .isEqualTo(ReferenceFrames.crc(part));
    }
  }

  @Test
  void stuffingMeetsPublishedExamplesBothWays() {
    List<String[]> rows = Vectors.rows("cobs.txt");
    assertThat(rows).hasSize(12);
    for (String[] row : rows) {
      byte[] plain = HEX.parseHex(row[0].trim());
      byte[] encoded = HEX.parseHex(row[1]);
      byte[] out = new byte[Cobs.longestEncoded(plain.length)];
      assertThat(Arrays.copyOf(out, Cobs.encode(plain, 0, plain.length, out, 0)))
          .isEqualTo(encoded);
      assertThat(ReferenceFrames.cobs(plain)).isEqualTo(encoded);
      byte[] back = new byte[plain.length];
      assertThat(Cobs.decode(encoded, 0, encoded.length, back, back.length))
          .isEqualTo(plain.length);
      assertThat(back).isEqualTo(plain);
    }
  }

  @Test
  void decoderTakesTheExtraCodeAfterAnExactRun() {
    byte[] plain = new byte[254];
    Arrays.fill(plain, (byte) 7);
    byte[] encoded = new byte[256];
    Arrays.fill(encoded, (byte) 7);
    encoded[0] = (byte) 0xFF;
    encoded[255] = 1;
    byte[] back = new byte[254];
    assertThat(Cobs.decode(encoded, 0, 256, back, 254)).isEqualTo(254);
    assertThat(back).isEqualTo(plain);
    assertThat(Cobs.decode(encoded, 0, 255, back, 254)).isEqualTo(254);
  }
}
