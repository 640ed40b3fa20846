package firstamp.analysis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import firstamp.analysis.figures.SupplyCalculation;
import firstamp.analysis.spectrum.CosineWindow;
import firstamp.analysis.spectrum.Decibels;
import firstamp.analysis.spectrum.Fourier;
import firstamp.analysis.spectrum.Goertzel;
import firstamp.analysis.spectrum.PairSpectrum;
import firstamp.analysis.spectrum.VuBallistics;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Levels, windows, tones, waveforms and ballistics against published values. */
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

  /** One part: 0.075 mA near 20 C, 0.32 mA near 40 C, a public notebook; the rule gives 4 times. */
  @Test
  void germaniumLeakageDoublesEveryTenDegrees() {
    assertThat(SupplyCalculation.germaniumLeakageA(0.075e-3, 20, 40))
        .isCloseTo(0.3e-3, within(1e-9));
    assertThat(SupplyCalculation.germaniumLeakageA(0.075e-3, 20, 40))
        .isCloseTo(0.32e-3, within(0.03e-3));
  }
}
