package firstamp.analysis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import firstamp.analysis.calibrate.MeterAccuracy;
import firstamp.analysis.figures.SupplyCalculation;
import firstamp.analysis.spectrum.CosineWindow;
import firstamp.analysis.spectrum.Decibels;
import firstamp.analysis.spectrum.Fourier;
import firstamp.analysis.spectrum.Goertzel;
import firstamp.analysis.spectrum.LevelMeter;
import firstamp.analysis.spectrum.PairSpectrum;
import firstamp.analysis.spectrum.VuBallistics;
import firstamp.analysis.statistics.CombinedUncertainty;
import firstamp.analysis.statistics.GuardBand;
import firstamp.analysis.statistics.Moments;
import firstamp.analysis.statistics.StudentT;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Levels, windows, ballistics and uncertainties against published values. */
public class PublishedFiguresTest {
  /** dB references: IEC 60268-2 (from memory), several audio pages. */
  @Test
  void decibelReferences() {
    assertThat(Decibels.DBU_ZERO_V).isCloseTo(0.7745966692, within(1e-10));
    assertThat(Decibels.dbu(1.227652988)).isCloseTo(4, within(1e-8));
    assertThat(Decibels.dbv(1.227652988)).isCloseTo(1.781513, within(1e-6));
    assertThat(Decibels.dbu(1)).isCloseTo(2.218487, within(1e-6));
    assertThat(Decibels.voltsOfDbv(-10)).isCloseTo(0.316227766, within(1e-9));
    assertThat(Decibels.dbu(0.316227766)).isCloseTo(-7.781513, within(1e-6));
    // 50 uA in 10 ohm, worked out.
    assertThat(Decibels.dbu(0.5e-3)).isCloseTo(-63.80, within(0.005));
  }

  /**
   * F. J. Harris, Proc. IEEE 66(1), 1978, table I, Hann: gain 0.50, 1.50 bins, 1.42 dB scalloping;
   * further digits worked out from the definitions there.
   */
  @Test
  void hannWindow() {
    double[] window = CosineWindow.HANN.of(800);
    double sum = 0;
    double squares = 0;
    double re = 0;
    double im = 0;
    for (int n = 0; n < 800; n++) {
      sum += window[n];
      squares += window[n] * window[n];
      re += window[n] * Math.cos(Math.PI * n / 800);
      im += window[n] * Math.sin(Math.PI * n / 800);
    }
    assertThat(sum / 800).isCloseTo(0.5, within(1e-12));
    assertThat(800 * squares / (sum * sum)).isCloseTo(1.5, within(1e-12));
    assertThat(Decibels.ratio(sum, Math.hypot(re, im))).isCloseTo(1.4236, within(1e-3));
  }

  /**
   * Definitions of F. J. Harris, Proc. IEEE 66(1), 1978: gain, equivalent noise bandwidth and
   * scalloping, worked out here from the coefficients (flat-top: those of
   * scipy.signal.windows.flattop; the three-term one: made up). His table I prints the same for
   * rectangular and Hann; for Hamming it prints 1.78 dB of scalloping, the definition gives 1.751.
   */
  @ParameterizedTest
  @CsvSource({
    "1, 1, 1.000, 3.922, 0.001",
    "0.5 0.5, 0.5, 1.500, 1.4236, 0.001",
    "0.54 0.46, 0.54, 1.3628, 1.751, 0.001",
    "0.21557895 0.41663158 0.277263158 0.083578947 0.006947368, 0.21558, 3.7702, 0.0098, 0.001",
    "0.281 0.521 0.198, 0.281, 2.967, 0.01, 0.02"
  })
  void windows(String terms, double gain, double bins, double scallopDb, double within) {
    double[] of =
        java.util.Arrays.stream(terms.split(" ")).mapToDouble(Double::parseDouble).toArray();
    CosineWindow window = new CosineWindow(of);
    assertThat(window.coherentGain()).isCloseTo(gain, within(1e-5));
    assertThat(window.noiseBandwidthBins()).isCloseTo(bins, within(5e-4));
    double[] weights = window.of(800);
    double[] cosine = new double[800];
    double[] sine = new double[800];
    double sum = 0;
    double squares = 0;
    for (int n = 0; n < 800; n++) {
      sum += weights[n];
      squares += weights[n] * weights[n];
      cosine[n] = Math.cos(2 * Math.PI * (100.5 / 800) * n);
      sine[n] = Math.sin(2 * Math.PI * (100.5 / 800) * n);
    }
    assertThat(800 * squares / (sum * sum)).isCloseTo(bins, within(5e-4));
    // Both phases together: what comes from the negative frequency cancels in the mean.
    Goertzel bin = new Goertzel(100.0 / 800);
    double seen = Math.hypot(bin.magnitude(cosine, weights), bin.magnitude(sine, weights));
    assertThat(Decibels.ratio(sum / Math.sqrt(2), seen)).isCloseTo(scallopDb, within(within));
  }

  /** Bins of DTMF (ITU-T Q.23) for 205 samples at 8 kHz, application-note practice, from memory. */
  @ParameterizedTest
  @CsvSource({
    "697, 18, 1.703275",
    "770, 20, 1.635859",
    "852, 22, 1.562297",
    "941, 24, 1.482867",
    "1209, 31, 1.163138",
    "1336, 34, 1.008835",
    "1477, 38, 0.790074",
    "1633, 42, 0.559454"
  })
  void goertzelOnTheTonesOfTheTelephone(double hz, int bin, double coefficient) {
    assertThat((int) Math.floor(0.5 + 205 * hz / 8000)).isEqualTo(bin);
    Goertzel single = new Goertzel(bin / 205.0);
    assertThat(single.coefficient()).isCloseTo(coefficient, within(1e-6));
    double[] tone = new double[205];
    double[] flat = new double[205];
    for (int n = 0; n < 205; n++) {
      tone[n] = Math.sin(2 * Math.PI * bin * n / 205.0);
      flat[n] = 1;
    }
    assertThat(single.magnitude(tone, flat)).isCloseTo(102.5, within(1e-9));
  }

  /** Amplitude 1 at 100 Hz, 1 kHz, 100 samples: 50, at 110 Hz nothing; worked out. */
  @Test
  void goertzelGivesTheTransform() {
    double[] tone = new double[100];
    double[] flat = new double[100];
    for (int n = 0; n < 100; n++) {
      tone[n] = Math.sin(2 * Math.PI * 0.1 * n);
      flat[n] = 1;
    }
    assertThat(new Goertzel(0.1).magnitude(tone, flat)).isCloseTo(50, within(1e-10));
    assertThat(2.0 / 100 * new Goertzel(0.1).magnitude(tone, flat)).isCloseTo(1, within(1e-12));
    assertThat(new Goertzel(0.11).magnitude(tone, flat)).isLessThan(1e-6);
  }

  /**
   * 1 V at 400 Hz with 10 mV at 100 Hz is a hum ratio of -40 dB; a sine 30 Hz off leaks nothing.
   */
  @Test
  void toneAndHumInOneTransform() {
    PairSpectrum spectrum = new PairSpectrum(new Fourier(800, 5, 5, 4, 4, 2));
    DoubleUnaryOperator tone = SignalFeed.sine(1, 400);
    DoubleUnaryOperator hum = SignalFeed.sine(0.01, 100);
    double[] a = new double[800];
    for (int n = 0; n < 800; n++) {
      a[n] = tone.applyAsDouble(n / 4000.0) + hum.applyAsDouble(n / 4000.0);
    }
    spectrum.compute(a, new double[800]);
    double toneV = Math.sqrt(PairSpectrum.band(spectrum.powerA(), 78, 82));
    double humV = Math.sqrt(PairSpectrum.band(spectrum.powerA(), 18, 22));
    assertThat(toneV).isCloseTo(1, within(1e-12));
    assertThat(Decibels.ratio(humV, toneV)).isCloseTo(-40, within(1e-9));
    assertThat(PairSpectrum.band(spectrum.powerA(), 84, 90)).isLessThan(1e-24);
    assertThat(PairSpectrum.band(spectrum.powerB(), 1, 399)).isLessThan(1e-24);
  }

  /** rms and rectified mean of the shapes for a peak of 1: their integrals over one period. */
  @ParameterizedTest
  @CsvSource({
    "sine, 0.707107, 0.636620",
    "square, 1, 1",
    "triangle, 0.577350, 0.5",
    "halfwave, 0.5, 0.318310",
    "fullwave, 0.707107, 0.636620"
  })
  void waveformFactors(String shape, double rms, double rectifiedMean) {
    int n = 40_000;
    double squares = 0;
    double mean = 0;
    for (int k = 0; k < n; k++) {
      double value = shape(shape, (k + 0.5) / n);
      squares += value * value;
      mean += Math.abs(value);
    }
    assertThat(Math.sqrt(squares / n)).isCloseTo(rms, within(1e-5));
    assertThat(mean / n).isCloseTo(rectifiedMean, within(1e-5));
  }

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

  /** The meter's band holds a square's and a triangle's power: what is over 1600 Hz is missing. */
  @Test
  void averageResponseErrorOfNonSines() {
    // An average-responding meter reads a square 0.9121 dB high and a triangle 0.3373 dB low.
    assertThat(needleOn("square") - Decibels.dbv(1)).isCloseTo(0.9121, within(0.02));
    assertThat(needleOn("triangle") - Decibels.dbv(0.577350)).isCloseTo(-0.3373, within(0.02));
    assertThat(needleOn("sine") - Decibels.dbv(0.707107)).isCloseTo(0, within(0.02));
  }

  private static double needleOn(String shape) {
    VuBallistics needle = new VuBallistics(40_000);
    double sum = 0;
    for (int k = 0; k < 80_000; k++) {
      double place = needle.put(shape(shape, k * 1000 / 40_000.0 % 1));
      sum += k >= 40_000 ? place : 0;
    }
    return Decibels.dbv(sum / 40_000);
  }

  private static double shape(String shape, double phase) {
    double sine = Math.sin(2 * Math.PI * phase);
    return switch (shape) {
      case "sine" -> sine;
      case "square" -> phase < 0.5 ? 1 : -1;
      case "triangle" -> 1 - 4 * Math.abs(phase - 0.5);
      case "halfwave" -> Math.max(0, sine);
      default -> Math.abs(sine);
    };
  }

  /**
   * ANSI C16.5-1942 / IEC 60268-17 at second hand: 99 % in 300 ms (+-10 %), 1 to 1.5 % over; 0 VU
   * is 1.228 V rms.
   */
  @Test
  void needleRisesAndSwingsOverAsPublished() {
    VuBallistics needle = new VuBallistics(4000);
    assertThat(VuBallistics.ZERO_V).isCloseTo(1.227652988, within(1e-8));
    double first99 = 0;
    double highest = 0;
    double peakAt = 0;
    double last = 0;
    for (int k = 0; k < 8000; k++) {
      double t = k / 4000.0;
      // Held at the mean of the rectified sine: the rise is the movement's own.
      last = needle.put(VuBallistics.ZERO_V * 2 * Math.sqrt(2) / Math.PI);
      if (first99 == 0 && last >= 0.99 * VuBallistics.ZERO_V) {
        first99 = t;
      }
      if (last > highest) {
        highest = last;
        peakAt = t;
      }
    }
    assertThat(first99).isCloseTo(0.3, within(0.001));
    assertThat(highest / VuBallistics.ZERO_V).isBetween(1.01, 1.015);
    assertThat(peakAt).isCloseTo(0.399, within(0.003));
    assertThat(needle.vu()).isCloseTo(0, within(0.001));
    for (int k = 0; k < 1200; k++) {
      last = needle.put(0);
    }
    assertThat(last).isLessThan(0.011 * VuBallistics.ZERO_V);
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

  /** One part: 0.075 mA near 20 C, 0.32 mA near 40 C, a public notebook; the rule gives 4 times. */
  @Test
  void germaniumLeakageDoublesEveryTenDegrees() {
    assertThat(SupplyCalculation.germaniumLeakageA(0.075e-3, 20, 40))
        .isCloseTo(0.3e-3, within(1e-9));
    assertThat(SupplyCalculation.germaniumLeakageA(0.075e-3, 20, 40))
        .isCloseTo(0.32e-3, within(0.03e-3));
  }
}
