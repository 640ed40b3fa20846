package firstamp.analysis.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.apache.commons.math3.distribution.TDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class WelchTest {
  /**
   * Rows 1 and 2: TTestTest of apache/commons-math, values from R 1.8.1. Row 3: Student's sleep
   * data, R documentation of {@code sleep} (from memory, recomputed).
   */
  @ParameterizedTest
  @CsvSource({
    "7 -4 18 17 -3 -5 1 10 11 -2, -1 12 -1 -3 3 -5 5 2 -11 -1 -3,"
        + " 1.60371728768, 15.5905129687, 0.128839369622",
    "1 3, 4 5, -2.2360679775, 1.47058823529, 0.198727388935",
    "0.7 -1.6 -0.2 -1.2 -0.1 3.4 3.7 0.8 0 2, 1.9 0.8 1.1 0.1 -0.1 4.4 5.5 1.6 4.6 3.4,"
        + " -1.86081346749, 17.7764735162, 0.0793941401874"
  })
  void agreesWithPublishedCases(String first, String second, double t, double df, double p) {
    // The published t is of first less second.
    Welch welch = Welch.of(numbers(second), numbers(first), 0);
    assertThat(welch.t()).isCloseTo(t, within(1e-10));
    assertThat(welch.uncertainty().degrees()).isCloseTo(df, within(1e-9));
    assertThat(welch.p()).isCloseTo(p, within(1e-10));
    assertThat(welch.significant()).isFalse();
  }

  /** Two-sided 5 % points of any t table, and to many digits of commons-math3's distribution. */
  @ParameterizedTest
  @CsvSource({"1, 12.706", "2, 4.303", "5, 2.571", "10, 2.228", "16, 2.120", "30, 2.042"})
  void agreesWithTheTableOfStudent(int degrees, double quantile) {
    assertThat(StudentT.quantile(0.05, degrees)).isCloseTo(quantile, within(5e-4));
    assertThat(StudentT.quantile(0.05, degrees))
        .isCloseTo(new TDistribution(degrees).inverseCumulativeProbability(0.975), within(1e-6));
    assertThat(StudentT.twoSided(1.7, degrees))
        .isCloseTo(2 * new TDistribution(degrees).cumulativeProbability(-1.7), within(1e-11));
  }

  @Test
  void twoCalibrationsMakeASmallDifferenceUncertain() {
    double[] before = {0.1180, 0.1181, 0.1179, 0.1180};
    double[] after = {0.1200, 0.1201, 0.1199, 0.1200};
    assertThat(Welch.of(before, after, 0).significant()).isTrue();
    Welch wide = Welch.of(before, after, 0.003);
    assertThat(wide.significant()).isFalse();
    // Calibrations have no scatter of their own: 1.96 of 3 mA.
    assertThat(wide.plusMinus()).isCloseTo(0.00588, within(0.0001));
  }

  @Test
  void saysNothingOfSingleValuesOrOfNoScatter() {
    assertThat(Welch.of(new double[] {1}, new double[] {1, 2}, 0)).isNull();
    assertThat(Welch.of(new double[] {1, 1}, new double[] {1, 1}, 0)).isNull();
  }

  private static double[] numbers(String list) {
    return Arrays.stream(list.trim().split(" +")).mapToDouble(Double::parseDouble).toArray();
  }
}
