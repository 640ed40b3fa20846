package firstamp.analysis.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Against NIST's StRD nonlinear data sets Misra1a and BoxBOD, y = b1 (1 - exp(-b2 x)), from both
 * published starts of b2 (b1 enters linearly and is solved for).
 */
class FirstOrderFitTest {
  private static final double[] MISRA_X = {
    77.6, 114.9, 141.1, 190.8, 239.9, 289.0, 332.8, 378.4, 434.8, 477.3, 536.8, 593.1, 689.1, 760.0
  };
  private static final double[] MISRA_Y = {
    10.07, 14.73, 17.94, 23.93, 29.61, 35.18, 40.02, 44.82, 50.76, 55.05, 61.01, 66.40, 75.47, 81.78
  };
  private static final double[] BOX_X = {1, 2, 3, 5, 7, 10};
  private static final double[] BOX_Y = {109, 149, 149, 191, 213, 224};

  @ParameterizedTest
  @ValueSource(doubles = {0.0001, 0.0005})
  void agreesWithMisra1aFromBothStarts(double rate) {
    FirstOrderFit fit = FirstOrderFit.fromZero(MISRA_X, MISRA_Y, rate);
    close(fit.rise(), 2.3894212918E+02, 1e-6);
    close(fit.rate(), 5.5015643181E-04, 1e-6);
    close(fit.riseError(), 2.7070075241E+00, 1e-4);
    close(fit.rateError(), 7.2668688436E-06, 1e-4);
    close(fit.residualDeviation(), 1.0187876330E-01, 1e-6);
    // 1/b2, worked out from the certified b2.
    close(fit.tau(), 1817.664835, 1e-6);
  }

  @ParameterizedTest
  @ValueSource(doubles = {1, 0.75})
  void agreesWithBoxBodFromBothStarts(double rate) {
    FirstOrderFit fit = FirstOrderFit.fromZero(BOX_X, BOX_Y, rate);
    close(fit.rise(), 2.1380940889E+02, 1e-6);
    close(fit.rate(), 5.4723748542E-01, 1e-6);
    close(fit.riseError(), 1.2354515176E+01, 1e-4);
    close(fit.rateError(), 1.0455993237E-01, 1e-4);
    close(fit.residualDeviation(), 1.7088072423E+01, 1e-6);
  }

  @Test
  void findsOffsetRiseAndRateOfACleanCurve() {
    double[] x = new double[60];
    double[] y = new double[60];
    for (int k = 0; k < 60; k++) {
      x[k] = k * 0.01;
      y[k] = 1.5 + 6.7 * (1 - Math.exp(-x[k] / 0.096));
    }
    FirstOrderFit fit = FirstOrderFit.of(x, y);
    assertThat(fit.tau()).isCloseTo(0.096, within(1e-9));
    assertThat(fit.offset()).isCloseTo(1.5, within(1e-9));
    assertThat(fit.rise()).isCloseTo(6.7, within(1e-9));
    assertThat(fit.misfit()).isLessThan(1e-9);
    assertThat(fit.at(0.096)).isCloseTo(1.5 + 6.7 * 0.6321205588, within(1e-8));
  }

  @Test
  void fallingCurvesAreFittedToo() {
    double[] x = new double[40];
    double[] y = new double[40];
    for (int k = 0; k < 40; k++) {
      x[k] = k * 0.01;
      y[k] = 0.1 + 2 * Math.exp(-x[k] / 0.05);
    }
    FirstOrderFit fit = FirstOrderFit.of(x, y);
    assertThat(fit.tau()).isCloseTo(0.05, within(1e-8));
    assertThat(fit.rise()).isCloseTo(-2, within(1e-6));
  }

  @Test
  void saysNothingOfAFlatLineOrTooFewPoints() {
    double[] x = {0, 1, 2, 3, 4, 5, 6};
    double[] flat = {3, 3, 3, 3, 3, 3, 3};
    assertThat(FirstOrderFit.of(x, flat)).isNull();
    assertThat(FirstOrderFit.of(new double[] {0, 1, 2}, new double[] {0, 1, 1.5})).isNull();
  }

  private static void close(double value, double certified, double relative) {
    assertThat(value).isCloseTo(certified, within(relative * Math.abs(certified)));
  }
}
