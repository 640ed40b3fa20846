package firstamp.alarm.trail;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The sums behind the rule about a climbing current, against published figures. */
class CusumTest {
  /**
   * Twenty group means, target 325: NIST/SEMATECH e-Handbook of Statistical Methods, section
   * 6.3.2.3, as quoted in the manual page of the R package vMask (second hand). k = 0.3175 and h =
   * 4.1959 are the Handbook's, from memory.
   */
  private static final double[] MEANS = {
    324.925, 324.675, 324.725, 324.350, 325.350, 325.225, 324.125, 324.525, 325.225, 324.600,
    324.625, 325.150, 328.325, 327.250, 327.825, 328.500, 326.675, 327.775, 326.875, 328.350
  };

  @Test
  void signalsWhereTheHandbooksExampleDoes() {
    Cusum sums = new Cusum(0.3175, 4.1959);
    int first = 0;
    double lowest = 0;
    double[] high = new double[MEANS.length + 1];
    for (int k = 1; k <= MEANS.length; k++) {
      sums.take(MEANS[k - 1] - 325);
      high[k] = sums.high();
      lowest = Math.max(lowest, sums.low());
      if (first == 0 && sums.above()) {
        first = k;
      }
    }
    assertThat(first).isEqualTo(14);
    assertThat(high[13]).isCloseTo(3.0075, within(1e-9));
    assertThat(high[14]).isCloseTo(4.94, within(1e-9));
    assertThat(high[20]).isCloseTo(19.035, within(1e-9));
    // The largest of the sums downwards that the example shows.
    assertThat(sums.below()).isFalse();
    assertThat(lowest).isLessThan(4.1959);
  }

  /**
   * Average run lengths of the two-sided scheme, k = 1/2: Montgomery, Introduction to Statistical
   * Quality Control, table of average run lengths (from memory; h = 4: 168, 26.6, 8.38, 3.34; h =
   * 5: 465, 38.0, 10.4, 4.01). Here by simulation with a fixed seed, within 5 %.
   */
  @ParameterizedTest
  @CsvSource({
    "4, 0, 168", "4, 0.5, 26.6", "4, 1, 8.38", "4, 2, 3.34",
    "5, 0, 465", "5, 0.5, 38.0", "5, 1, 10.4", "5, 2, 4.01"
  })
  void runsAsLongAsThePublishedTableSays(double decision, double shift, double published) {
    java.util.Random random = new java.util.Random(7);
    int runs = 4000;
    long values = 0;
    for (int run = 0; run < runs; run++) {
      Cusum sums = new Cusum(0.5, decision);
      while (!sums.above() && !sums.below()) {
        sums.take(shift + random.nextGaussian());
        values++;
      }
    }
    assertThat(values / (double) runs).isCloseTo(published, within(0.05 * published));
  }
}
