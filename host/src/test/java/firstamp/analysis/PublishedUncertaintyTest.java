package firstamp.analysis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import firstamp.analysis.calibrate.MeterAccuracy;
import firstamp.analysis.spectrum.LevelMeter;
import firstamp.analysis.statistics.CombinedUncertainty;
import firstamp.analysis.statistics.GuardBand;
import firstamp.analysis.statistics.Moments;
import firstamp.analysis.statistics.StudentT;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Uncertainties and guard bands against the published examples of the GUM. */
final class PublishedUncertaintyTest {
  /** JCGM 100:2008, 4.3.7, 4.3.9, F.2.2.1: half-widths and a step as standard uncertainties. */
  @Test
  void distributionsOfTypeB() {
    MeterAccuracy meter = new MeterAccuracy(1, 0.02);
    assertThat(meter.standardShare()).isCloseTo(0.0057735, within(1e-7));
    assertThat(meter.standardSmallest()).isCloseTo(0.0115470, within(1e-7));
    assertThat(
            Math.sqrt(LevelMeter.CONVERTER_NOISE_COUNTS * LevelMeter.CONVERTER_NOISE_COUNTS - 0.49))
        .isCloseTo(0.288675, within(1e-6));
  }

  /**
   * JCGM 100:2008, example H.1 (end gauge). It prints 9.7 nm, 32 nm, 16 degrees of freedom, k 2.92
   * and 93 nm; 31.664, 16.75 and 92.5 are worked out from its inputs without rounding between.
   */
  @Test
  void gumExampleH1() {
    CombinedUncertainty difference =
        CombinedUncertainty.of(new double[] {5.8, 3.9, 6.7}, new double[] {24, 5, 8});
    assertThat(difference.standard()).isCloseTo(9.7, within(0.05));
    CombinedUncertainty length =
        CombinedUncertainty.of(
            new double[] {25, difference.standard(), 2.9, 16.6},
            new double[] {18, difference.degrees(), 50, 2});
    assertThat(Math.round(length.standard())).isEqualTo(32);
    assertThat((int) length.degrees()).isEqualTo(16);
    assertThat(length.standard()).isCloseTo(31.664, within(0.05));
    assertThat(length.degrees()).isCloseTo(16.75, within(0.1));
    assertThat(StudentT.quantile(0.01, 16)).isCloseTo(2.92, within(0.005));
    assertThat(new CombinedUncertainty(length.standard(), 16).expanded(0.99))
        .isCloseTo(92.5, within(0.2));
  }

  /** JCGM 100:2008, example H.2, second approach: five sets of volts, amperes and phase. */
  @Test
  void gumExampleH2() {
    double[] v = {5.007, 4.994, 5.005, 4.990, 4.999};
    double[] i = {0.019663, 0.019639, 0.019640, 0.019685, 0.019678};
    double[] phi = {1.0456, 1.0438, 1.0468, 1.0428, 1.0433};
    double[] r = new double[5];
    double[] x = new double[5];
    double[] z = new double[5];
    for (int k = 0; k < 5; k++) {
      z[k] = v[k] / i[k];
      r[k] = z[k] * Math.cos(phi[k]);
      x[k] = z[k] * Math.sin(phi[k]);
    }
    holds(v, 4.9990, 0.0032, 5e-5);
    holds(i, 0.0196610, 0.0000095, 5e-8);
    holds(phi, 1.04446, 0.00075, 5e-6);
    holds(r, 127.732, 0.071, 5e-4);
    holds(x, 219.847, 0.2956, 6e-4);
    holds(z, 254.260, 0.236, 5e-4);
    // Table H.2 and H.4: correlation of the means, here of the columns.
    assertThat(correlation(v, i)).isCloseTo(-0.36, within(0.005));
    assertThat(correlation(v, phi)).isCloseTo(0.86, within(0.005));
    assertThat(correlation(i, phi)).isCloseTo(-0.65, within(0.005));
    assertThat(correlation(r, x)).isCloseTo(-0.588, within(0.001));
    assertThat(correlation(r, z)).isCloseTo(-0.485, within(0.001));
    assertThat(correlation(x, z)).isCloseTo(0.993, within(0.001));
  }

  /**
   * The first approach of H.2: from the rounded means with their correlations (GTC's documentation
   * prints 127.732(70), 219.85(30), 254.26(24)); sensitivities are those of Z = V / I, R = Z cos
   * phi, X = Z sin phi.
   */
  @Test
  void gumExampleH2FromCorrelatedMeans() {
    double v = 4.9990;
    double i = 0.0196610;
    double phi = 1.04446;
    double[] u = {0.0032, 0.0000095, 0.00075};
    double[][] rho = {{1, -0.36, 0.86}, {-0.36, 1, -0.65}, {0.86, -0.65, 1}};
    double z = v / i;
    double r = z * Math.cos(phi);
    double x = z * Math.sin(phi);
    assertThat(r).isCloseTo(127.732, within(6e-3));
    assertThat(x).isCloseTo(219.847, within(6e-3));
    assertThat(z).isCloseTo(254.260, within(6e-3));
    assertThat(CombinedUncertainty.correlated(new double[] {1 / i, -z / i, 0}, u, rho))
        .isCloseTo(0.24, within(0.005));
    assertThat(CombinedUncertainty.correlated(new double[] {Math.cos(phi) / i, -r / i, -x}, u, rho))
        .isCloseTo(0.070, within(0.002));
    assertThat(CombinedUncertainty.correlated(new double[] {Math.sin(phi) / i, -x / i, r}, u, rho))
        .isCloseTo(0.30, within(0.005));
  }

  private static double correlation(double[] a, double[] b) {
    return new org.apache.commons.math3.stat.correlation.PearsonsCorrelation().correlation(a, b);
  }

  private static void holds(double[] values, double mean, double u, double rounding) {
    Moments moments = Moments.of(values);
    assertThat(moments.mean()).isCloseTo(mean, within(rounding * 1.2));
    assertThat(moments.meanUncertainty()).isCloseTo(u, within(rounding * 1.2));
  }

  /**
   * ILAC-G8:09/2019 4.2; the example (limit 3, U 1: 1.7 inside, 2.5 not proven) from a metrology
   * blog.
   */
  @ParameterizedTest
  @CsvSource({
    "1.7, INSIDE",
    "2.0, INSIDE",
    "2.5, LIKELY_INSIDE",
    "3.0, LIKELY_INSIDE",
    "3.5, LIKELY_OUTSIDE",
    "4.0, LIKELY_OUTSIDE",
    "4.1, OUTSIDE"
  })
  void guardBands(double value, GuardBand expected) {
    assertThat(GuardBand.below(value, 1, 3)).isEqualTo(expected);
    assertThat(GuardBand.above(-value, 1, -3)).isEqualTo(expected);
  }
}
