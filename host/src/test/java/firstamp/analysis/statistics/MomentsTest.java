package firstamp.analysis.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Against NIST's StRD univariate data sets: files and certified values as packed in the tests jar
 * of commons-math3 3.6.1 (org/apache/commons/math3/stat/data).
 */
class MomentsTest {
  @ParameterizedTest
  @CsvSource({
    // set, n, mean, s, lag-1 correlation, relative tolerance of s, absolute of the correlation
    "PiDigits, 5000, 4.53480000000000, 2.86733906028871, -0.00355099287237972, 1e-13, 1e-12",
    "Lottery, 218, 518.958715596330, 291.699727470969, -0.120948622967393, 1e-13, 1e-12",
    "Lew, 200, -177.435000000000, 277.332168044316, -0.307304800605679, 1e-13, 1e-12",
    "Mavro, 50, 2.00185600000000, 0.000429123454003053, 0.937989183438248, 1e-12, 1e-10",
    "Michelso, 100, 299.852400000000, 0.0790105478190518, 0.535199668621283, 1e-12, 1e-10",
    "NumAcc1, 3, 10000002, 1, -0.5, 1e-13, 1e-12",
    "NumAcc2, 1001, 1.2, 0.1, -0.999, 1e-12, 1e-10",
    "NumAcc3, 1001, 1000000.2, 0.1, -0.999, 1e-9, 1e-8",
    "NumAcc4, 1001, 10000000.2, 0.1, -0.999, 1e-8, 1e-6"
  })
  void agreesWithTheCertifiedValues(
      String set, int n, double mean, double s, double r1, double tolerance, double r1Tolerance)
      throws IOException {
    double[] values = values(set);
    assertThat(values).hasSize(n);
    Moments moments = Moments.of(values);
    assertThat(moments.mean()).isCloseTo(mean, within(1e-13 * Math.abs(mean)));
    assertThat(moments.deviation()).isCloseTo(s, within(tolerance * s));
    assertThat(Moments.neighbourCorrelation(values)).isCloseTo(r1, within(r1Tolerance));
  }

  @Test
  void medianIsTheMiddleOne() {
    assertThat(Moments.median(new double[] {3, 1, 2})).isEqualTo(2);
    assertThat(Moments.median(new double[] {4, 1, 3, 2})).isEqualTo(2.5);
  }

  /** The data are what stands last: lines of one number. */
  private static double[] values(String set) throws IOException {
    String resource = String.format(Locale.ROOT, "/org/apache/commons/math3/stat/data/%s.txt", set);
    try (BufferedReader reader =
        new BufferedReader(
            new InputStreamReader(
                Objects.requireNonNull(
                    org.apache.commons.math3.stat.descriptive.StatisticalSummary.class
                        .getResourceAsStream(resource)),
                StandardCharsets.US_ASCII))) {
      List<String> lines = reader.lines().map(String::trim).filter(l -> !l.isEmpty()).toList();
      int begin = lines.size();
      while (begin > 0 && lines.get(begin - 1).matches("[-+]?[0-9]+[.]?[0-9]*")) {
        begin--;
      }
      return lines.subList(begin, lines.size()).stream().mapToDouble(Double::parseDouble).toArray();
    }
  }
}
