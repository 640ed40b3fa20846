package firstamp.locate.odds;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class InformationTest {
  /** Columns: yes, no. Rows of a table of 14 days. */
  private static double gain(double[][] counts) {
    double[] shares = {9 / 14.0, 5 / 14.0};
    double[][] answers = new double[2][counts.length];
    for (int value = 0; value < counts.length; value++) {
      answers[0][value] = counts[value][0] / 9;
      answers[1][value] = counts[value][1] / 5;
    }
    return Information.gainBits(shares, answers);
  }

  /** T. Mitchell, Machine Learning, 1997, table 3.2: fourteen days of tennis. */
  @Test
  void agreesWithTheTennisTable() {
    assertThat(Information.entropyBits(new double[] {9 / 14.0, 5 / 14.0}))
        .isCloseTo(0.940286, within(1e-6));
    double[][] outlook = {{2, 3}, {4, 0}, {3, 2}};
    double[][] humidity = {{3, 4}, {6, 1}};
    double[][] wind = {{6, 2}, {3, 3}};
    double[][] temperature = {{2, 2}, {4, 2}, {3, 1}};
    assertThat(gain(outlook)).isCloseTo(0.24675, within(1e-5));
    assertThat(gain(humidity)).isCloseTo(0.15184, within(1e-5));
    assertThat(gain(wind)).isCloseTo(0.04813, within(1e-5));
    assertThat(gain(temperature)).isCloseTo(0.02922, within(1e-5));
  }

  /** Bayes by hand: 0.5 x 0.9 / (0.5 x 0.9 + 0.5 x 0.2) = 9/11. */
  @Test
  void agreesWithBayesByHand() {
    double[] shares =
        Information.shares(
            new double[] {
              StrictMath.log(0.5) + StrictMath.log(0.9), StrictMath.log(0.5) + StrictMath.log(0.2)
            });
    assertThat(shares[0]).isCloseTo(0.818182, within(1e-6));
  }

  @Test
  void keepsOddsWhoseWeightsVanish() {
    double[] shares = Information.shares(new double[] {-5000, -5000 + StrictMath.log(3)});
    assertThat(shares[1]).isCloseTo(0.75, within(1e-9));
  }

  /** Table of the normal distribution: 1.96 leaves 2.5 % above, 3 leaves 0.135 %. */
  @Test
  void knowsTheNormalDistribution() {
    assertThat(Information.normalBelow(1.959964)).isCloseTo(0.975, within(1e-6));
    assertThat(Information.normalBelow(-3)).isCloseTo(0.001349898, within(1e-6));
  }
}
