package firstamp.log.code;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.log.Rows;
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
  private static final List<BankTrainer.Effort> EFFORTS =
      List.of(BankTrainer.Effort.LIVE, BankTrainer.Effort.SHORT, BankTrainer.Effort.REPACK);

  private final Random random = new Random(5);

  @Test
  void givesBackSeriesOfManyShapesAndLengths() throws Exception {
    for (int count : new int[] {0, 1, 2, 63, 64, 65, 999, 1024, 4095, 40_000, 40_001}) {
      for (int shape = 0; shape < 8; shape++) {
        int[] values = shape(shape, count);
        for (BankTrainer.Effort effort : EFFORTS) {
          check(values, SeriesCoder.encode(values, count, null, effort), null);
          for (int stride : new int[] {1, 8}) {
            int[] other = shape(2 + count % 3, stride * count + 5);
            ReferenceChannel companion =
                ReferenceChannel.of(other, other.length, stride, count % 7 - 3, 16);
            check(values, SeriesCoder.encode(values, count, companion, effort), other);
          }
        }
        check(values, SeriesCoder.encode(values, count), null);
        check(values, SeriesCoder.smallest(values, count), null);
      }
    }
  }

  @Test
  void givesBackAnyPartWithoutDecodingTheRest() throws Exception {
    int[] head = shape(4, 40_000);
    int[] meter = head.clone();
    for (int k = 0; k < meter.length; k++) {
      meter[k] = 2 * head[k] - 480 + random.nextInt(2);
    }
    SeriesCoder.Coded codedHead =
        SeriesCoder.encode(head, head.length, null, BankTrainer.Effort.LIVE);
    SeriesCoder.Coded codedMeter =
        SeriesCoder.encode(
            meter,
            meter.length,
            ReferenceChannel.of(head, head.length, 1, 0, 8),
            BankTrainer.Effort.LIVE);
    assertThat(codedMeter.version()).isEqualTo(SeriesCoder.BANK);
    assertThat(codedMeter.data().length).isLessThan(codedHead.data().length / 2);
    for (int from : new int[] {0, 1, 4095, 4096, 17_000, 39_999}) {
      CodedSeries other = new CodedSeries(codedHead.version(), codedHead.data(), head.length, null);
      CodedSeries part =
          new CodedSeries(codedMeter.version(), codedMeter.data(), meter.length, other);
      int to = Math.min(meter.length, from + 3000);
      CodedSeries.Part values = part.part(from, to);
      assertThat(
              java.util.Arrays.copyOfRange(
                  values.values(), from - values.origin(), to - values.origin()))
          .isEqualTo(java.util.Arrays.copyOfRange(meter, from, to));
      assertThat(values.values().length).isLessThanOrEqualTo(3000 + 4096);
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
    assertThat(bits(SeriesCoder.encode(values, values.length), values))
        .isBetween(1.645 * 0.985, 1.645 * 1.03);
    for (BankTrainer.Effort effort : EFFORTS) {
      assertThat(bits(SeriesCoder.encode(values, values.length, null, effort), values))
          .isBetween(1.645 * 0.985, 1.645 * 1.05);
    }
  }

  @Test
  void predictsAToneDownToItsNoise() {
    int[] values = shape(3, 40_000);
    assertThat(bits(SeriesCoder.encode(values, values.length), values)).isLessThan(1.95);
    assertThat(
            bits(SeriesCoder.encode(values, values.length, null, BankTrainer.Effort.LIVE), values))
        .isLessThan(2.0);
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
    for (SeriesCoder.Coded coded :
        List.of(
            SeriesCoder.encode(values, n),
            SeriesCoder.encode(values, n, null, BankTrainer.Effort.LIVE),
            SeriesCoder.smallest(values, n))) {
      check(values, coded, null);
      assertThat(coded.data().length).isLessThan(4 * n);
      if (name.equals("PiDigits")) {
        // Ten digits that come alike often hold log2(10) = 3.3219 bits each.
        assertThat(bits(coded, values)).isBetween(3.31, 3.50);
      }
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
    assertThat(Rows.crc32c("123456789".getBytes(StandardCharsets.US_ASCII))).isEqualTo(0xE3069283L);
    assertThat(Rows.crc32c(new byte[32])).isEqualTo(0x8A9136AAL);
    assertThat(Rows.crc32c(ones)).isEqualTo(0x62A8AB43L);
    assertThat(Rows.crc32c(ascending)).isEqualTo(0x46DD794EL);
    CRC32C jdk = new CRC32C();
    jdk.update(ascending);
    assertThat(Rows.crc32c(ascending)).isEqualTo(jdk.getValue());
  }

  @Test
  void refusesDamagedBytesWithoutAnyOtherException() {
    int[] values = shape(4, 5000);
    ReferenceChannel companion = ReferenceChannel.of(shape(4, 5000), 5000, 1, 0, 16);
    int refused = 0;
    for (int version = 0; version < 5; version++) {
      byte[] good =
          switch (version) {
            case SeriesCoder.PLAIN -> new byte[] {0, 0, 0, 0, 8};
            case SeriesCoder.BANK ->
                SeriesCoder.encode(values, 5000, companion, BankTrainer.Effort.REPACK).data();
            default -> SeriesCoder.encode(values, 5000).data();
          };
      for (int round = 0; round < 500; round++) {
        byte[] bad = java.util.Arrays.copyOf(good, random.nextInt(good.length + 1) + 1);
        if (round % 3 == 0) {
          bad = good.clone();
        }
        for (int flips = 0; flips < 3; flips++) {
          bad[random.nextInt(Math.min(bad.length, 1 + random.nextInt(bad.length)))] =
              (byte) random.nextInt();
        }
        try {
          int count = random.nextBoolean() ? 5000 : random.nextInt();
          CodedSeries other =
              new CodedSeries(SeriesCoder.PLAIN, new byte[] {7, 0, 0, 0, 0}, 5000, null);
          new CodedSeries(version, bad, count, random.nextBoolean() ? other : null).part(0, count);
        } catch (MalformedChunkException e) {
          refused++;
        }
      }
    }
    assertThat(refused).isGreaterThan(2000);
  }

  private static double bits(SeriesCoder.Coded coded, int[] values) {
    return 8.0 * coded.data().length / values.length;
  }

  private static void check(int[] values, SeriesCoder.Coded coded, int[] companion)
      throws Exception {
    CodedSeries other = null;
    if (companion != null) {
      byte[] plain = SeriesCoder.plain(companion, companion.length);
      other = new CodedSeries(SeriesCoder.PLAIN, plain, companion.length, null);
    }
    CodedSeries series = new CodedSeries(coded.version(), coded.data(), values.length, other);
    assertThat(series.part(0, values.length).values()).isEqualTo(values);
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
                    case 6 -> 16_000 * Math.sin(k * 0.01) + 200 * noise;
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
