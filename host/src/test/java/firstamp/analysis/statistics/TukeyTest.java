package firstamp.analysis.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import firstamp.analysis.calibrate.SettledSecond;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TukeyTest {
  private static final List<double[]> GROUPS =
      List.of(
          new double[] {24.5, 23.5, 26.4, 27.1, 29.9},
          new double[] {28.4, 34.2, 29.5, 32.2, 30.1},
          new double[] {26.1, 28.3, 24.3, 26.2, 27.8});

  /**
   * Data of the example of scipy.stats.tukey_hsd; p values, interval and half width recomputed with
   * scipy 1.17.1 (its page prints them rounded).
   */
  @Test
  void agreesWithThePublishedExample() {
    List<Tukey.Pair> pairs = Tukey.of(GROUPS).pairs();
    holds(pairs.get(0), 4.6, 0.0144483, true);
    holds(pairs.get(1), 0.26, 0.980311, false);
    holds(pairs.get(2), -4.34, 0.0203311, true);
    assertThat(pairs.get(0).difference() - pairs.get(0).plusMinus())
        .isCloseTo(0.950841, within(2e-6));
    assertThat(pairs.get(0).difference() + pairs.get(0).plusMinus())
        .isCloseTo(8.249159, within(2e-6));
    assertThat(pairs.get(0).plusMinus()).isCloseTo(3.649159, within(2e-6));
  }

  private static void holds(Tukey.Pair pair, double difference, double p, boolean significant) {
    assertThat(pair.difference()).isCloseTo(difference, within(1e-9));
    assertThat(pair.p()).isCloseTo(p, within(1e-6));
    assertThat(pair.significant()).isEqualTo(significant);
  }

  /** Tables print 3.88 for q(.95; 3, 10); the others from scipy 1.17.1, studentized_range. */
  @ParameterizedTest
  @CsvSource({
    "0.05, 3, 10, 3.876776750",
    "0.05, 5, 20, 4.231856749",
    "0.01, 4, 16, 5.191898172",
    "0.05, 10, 1e9, 4.474124222"
  })
  void agreesWithTheTableOfTheStudentizedRange(double p, int means, double degrees, double q) {
    assertThat(StudentizedRange.quantile(p, means, degrees)).isCloseTo(q, within(2e-5));
    assertThat(StudentizedRange.above(q, means, degrees)).isCloseTo(p, within(1e-6));
  }

  /** The rule of {@link SettledSecond}: ten means span over six deviations once in a thousand. */
  @Test
  void tenMeansSpanSixDeviationsOnceInAThousand() {
    // scipy 1.17.1: 0.00092152.
    assertThat(StudentizedRange.above(6, 10, 1e9)).isCloseTo(0.00092152, within(1e-7));
  }

  @Test
  void saysNothingOfSingleValuesOrOfNoScatter() {
    assertThat(Tukey.of(List.of(new double[] {1}, new double[] {1, 2}))).isNull();
    assertThat(Tukey.of(List.of(new double[] {1, 1}, new double[] {2, 2}))).isNull();
    assertThat(Tukey.of(List.of(new double[] {1, 2}))).isNull();
  }
}
