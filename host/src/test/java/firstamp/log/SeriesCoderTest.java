package firstamp.log;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.zip.CRC32C;
import org.apache.commons.math3.stat.data.LewTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class SeriesCoderTest {
  private final Random random = new Random(5);

  @Test
  void givesBackSeriesOfManyShapesAndLengths() throws Exception {
    for (int count : new int[] {0, 1, 2, 63, 64, 65, 999, 1000, 40_000, 40_001}) {
      for (int shape = 0; shape < 7; shape++) {
        int[] values = shape(shape, count);
        int[] companion = shape(2, count);
        check(values, null, LinearCoder.Strength.LIVE);
        check(values, companion, LinearCoder.Strength.REPACK);
      }
    }
  }

  /**
   * Gaussian noise of 0.7 count, rounded to whole counts, holds about 0.5 log2(2 pi e (0.49 +
   * 1/12)) = 1.645 bits a value (Shannon 1948, section 20, with the variance of rounding added).
   */
  @Test
  void codesNoiseOfSevenTenthsOfACountNearItsEntropy() {
    int[] values = new int[40_000];
    for (int k = 0; k < values.length; k++) {
      values[k] = (int) Math.round(511.3 + 0.7 * random.nextGaussian());
    }
    double bits = 8.0 * SeriesCoder.encode(values, values.length).data().length / values.length;
    assertThat(bits).isBetween(1.645 * 0.985, 1.645 * 1.03);
  }

  @Test
  void predictsAToneDownToItsNoise() {
    int[] values = shape(3, 40_000);
    double bits = 8.0 * SeriesCoder.encode(values, values.length).data().length / values.length;
    assertThat(bits).isLessThan(1.95);
  }

  /**
   * NIST Statistical Reference Datasets, univariate, as the test jar of commons-math 3.6.1 holds
   * them; decimals are taken as whole numbers of their last place.
   */
  @ParameterizedTest
  @CsvSource({
    "Lew, 200, 0, -579, 300",
    "Lottery, 218, 0, 4, 999",
    "PiDigits, 5000, 0, 0, 9",
    "Mavro, 50, 5, 200130, 200270",
    "Michelso, 100, 5, 29962000, 30007000",
    "NumAcc3, 1001, 1, 10000001, 10000003",
    "NumAcc4, 1001, 1, 100000001, 100000003"
  })
  void givesBackThePublishedSeries(String name, int n, int places, int lowest, int highest)
      throws Exception {
    int[] values = published(name, places);
    assertThat(values).hasSize(n);
    assertThat(java.util.Arrays.stream(values).min()).hasValue(lowest);
    assertThat(java.util.Arrays.stream(values).max()).hasValue(highest);
    int bytes = check(values, null, LinearCoder.Strength.LIVE);
    assertThat(bytes).isLessThan(4 * n);
    if (name.equals("PiDigits")) {
      // Ten digits that come alike often hold log2(10) = 3.3219 bits each.
      assertThat(8.0 * bytes / n).isBetween(3.31, 3.50);
    }
  }

  /** RFC 3720 appendix B.4 (from memory) and the catalogue's check value; against the JDK's. */
  @Test
  void checksumIsCrc32c() {
    byte[] ascending = new byte[32];
    byte[] ones = new byte[32];
    for (int k = 0; k < 32; k++) {
      ascending[k] = (byte) k;
      ones[k] = (byte) 0xff;
    }
    assertThat(StreamStore.crc32c("123456789".getBytes(StandardCharsets.US_ASCII)))
        .isEqualTo(0xE3069283L);
    assertThat(StreamStore.crc32c(new byte[32])).isEqualTo(0x8A9136AAL);
    assertThat(StreamStore.crc32c(ones)).isEqualTo(0x62A8AB43L);
    assertThat(StreamStore.crc32c(ascending)).isEqualTo(0x46DD794EL);
    CRC32C jdk = new CRC32C();
    jdk.update(ascending);
    assertThat(StreamStore.crc32c(ascending)).isEqualTo(jdk.getValue());
  }

  @Test
  void refusesDamagedBytesWithoutAnyOtherException() {
    int[] values = shape(4, 5000);
    int refused = 0;
    for (int version = 0; version < 4; version++) {
      byte[] good =
          version == 0 ? new byte[] {0, 0, 0, 0, 8} : SeriesCoder.encode(values, 5000).data();
      for (int round = 0; round < 300; round++) {
        byte[] bad = java.util.Arrays.copyOf(good, random.nextInt(good.length + 1) + 1);
        for (int flips = 0; flips < 3; flips++) {
          bad[random.nextInt(Math.min(bad.length, 1 + random.nextInt(bad.length)))] =
              (byte) random.nextInt();
        }
        try {
          SeriesCoder.decode(version, bad, random.nextBoolean() ? 5000 : random.nextInt());
        } catch (MalformedChunkException e) {
          refused++;
        }
      }
    }
    assertThat(refused).isGreaterThan(1000);
  }

  private int check(int[] values, int[] companion, LinearCoder.Strength strength) throws Exception {
    SeriesCoder.Coded coded = SeriesCoder.encode(values, values.length, companion, strength);
    assertThat(SeriesCoder.decode(coded.version(), coded.data(), values.length, companion))
        .isEqualTo(values);
    return coded.data().length;
  }

  private int[] shape(int shape, int count) {
    int[] values = new int[count];
    for (int k = 0; k < count; k++) {
      double noise = random.nextGaussian();
      values[k] =
          (int)
              Math.round(
                  switch (shape) {
                    case 0 -> 7;
                    case 1 -> random.nextInt();
                    case 2 -> 500 + 0.7 * noise;
                    case 3 -> 500 + 200 * Math.sin(k * 0.628) + 0.7 * noise;
                    case 4 -> 500 + (k % 8000 < 3000 ? 80 * noise : 0.7 * noise);
                    case 5 -> k * 1000.0;
                    default -> k % 97 == 0 ? 1023 : 0;
                  });
    }
    return values;
  }

  private static int[] published(String name, int places) throws Exception {
    List<Integer> values = new ArrayList<>();
    try (InputStream in = LewTest.class.getResourceAsStream(name + ".txt");
        BufferedReader lines =
            new BufferedReader(new InputStreamReader(in, StandardCharsets.US_ASCII))) {
      for (String line = lines.readLine(); line != null; line = lines.readLine()) {
        if (line.strip().matches("-?[0-9.]+")) {
          values.add(new BigDecimal(line.strip()).movePointRight(places).intValueExact());
        }
      }
    }
    return values.stream().mapToInt(Integer::intValue).toArray();
  }
}
