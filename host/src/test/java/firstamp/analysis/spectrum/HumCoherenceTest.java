package firstamp.analysis.spectrum;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class HumCoherenceTest {
  private long state = 7;

  /** The generator that the reference run used: 2^31, 1103515245, 12345; -0.5 to 0.5. */
  private double noise() {
    state = (1103515245L * state + 12345) % (1L << 31);
    return state / (double) (1L << 31) - 0.5;
  }

  /**
   * Against scipy 1.17.1, signal.coherence with a Hann window of 200, no overlap, no detrending,
   * ten windows of a 100 Hz tone in two independent noises.
   */
  @ParameterizedTest
  @CsvSource({
    "50, 0.09403719754323303",
    "100, 0.9109632009424657",
    "150, 0.15752384657372293",
    "200, 0.09662117064688734",
    "60, 0.026454358463079242",
    "120, 0.08065930872904613"
  })
  void agreesWithAReferenceLibrary(double hz, double expected) {
    PairSpectrum spectrum = new PairSpectrum(new Fourier(200, 5, 5, 4, 2));
    HumCoherence coherence = new HumCoherence(null);
    for (int window = 0; window < 10; window++) {
      double[] x = new double[200];
      double[] y = new double[200];
      for (int k = 0; k < 200; k++) {
        double tone = Math.cos(2 * Math.PI * 100 * (window * 200 + k) / 1000 + 0.3);
        x[k] = tone + 2.0 * noise();
        y[k] = 0.2 * tone + 1.5 * noise();
      }
      spectrum.compute(x, y);
      coherence.add(new MainsLines(spectrum, false, 5, 1), new MainsLines(spectrum, true, 5, 1), 0);
    }
    for (int line = 0; line < MainsLines.COUNT; line++) {
      if (MainsLines.hz(line) == hz) {
        assertThat(coherence.coherence(line)).isCloseTo(expected, within(1e-9));
        return;
      }
    }
    throw new AssertionError("no line at " + hz);
  }

  /** 1 - 0.05^(1/(N-1)), worked out: 5 windows 0.527, 20 windows 0.146. */
  @Test
  void chanceFallsWithTheWindows() {
    assertThat(HumCoherence.chance(5)).isCloseTo(0.527129, within(1e-6));
    assertThat(HumCoherence.chance(20)).isCloseTo(0.145869, within(1e-6));
  }

  /** Phases of the lines of one window: a line of so many volts at this phase. */
  private static MainsLines lines(double hz, double volts, double phase, double rest) {
    double[] x = new double[200];
    for (int k = 0; k < 200; k++) {
      x[k] =
          volts * Math.cos(2 * Math.PI * hz * k / 1000 + phase)
              + rest * Math.cos(2 * Math.PI * 50 * k / 1000 + phase / 2);
    }
    PairSpectrum spectrum = new PairSpectrum(new Fourier(200, 5, 5, 4, 2));
    spectrum.compute(x, new double[200]);
    return new MainsLines(spectrum, false, 5, 1);
  }

  @Test
  void inStepIsAFixedPhaseWhateverItIs() {
    HumCoherence coherence = new HumCoherence(null);
    for (int window = 0; window < 8; window++) {
      // The mains drifts: both phases turn together.
      coherence.add(lines(100, 1e-3, 0.4 * window + 1, 0), lines(100, 0.3, 0.4 * window, 0), 0);
    }
    assertThat(coherence.share(50)).isCloseTo(1, within(1e-6));
    assertThat(coherence.windows()).isEqualTo(8);
  }

  @Test
  void aPhaseThatWandersIsNotInStep() {
    HumCoherence coherence = new HumCoherence(null);
    for (int window = 0; window < 16; window++) {
      coherence.add(lines(100, 1e-3, 2.4 * window * window, 0), lines(100, 0.3, 0, 0), 0);
    }
    assertThat(coherence.share(50)).isLessThan(0.05);
  }

  @Test
  void aTraceOnTheRailExplainsNoStrongHumAtThatLine() {
    HumCoherence coherence = new HumCoherence(null);
    for (int window = 0; window < 8; window++) {
      // Head all at 50 Hz; the rail ripples at 100 Hz and holds a hundredth of that at 50.
      coherence.add(lines(100, 0, 0.4 * window, 1e-3), lines(100, 0.3, 0.4 * window, 0.003), 0);
    }
    assertThat(coherence.share(50)).isZero();
  }

  @Test
  void saysNothingOfFewWindowsOrASilentHead() {
    HumCoherence few = new HumCoherence(null);
    for (int window = 0; window < 4; window++) {
      few.add(lines(100, 1e-3, 0, 0), lines(100, 0.3, 0, 0), 0);
    }
    assertThat(few.share(50)).isNull();
    HumCoherence silent = new HumCoherence(null);
    for (int window = 0; window < 8; window++) {
      silent.add(lines(100, 0, 0, 0), lines(100, 0.3, 0, 0), 1e-12);
    }
    assertThat(silent.share(50)).isNull();
  }

  @Test
  void linesOfTheToneAreLeftOut() {
    HumCoherence coherence = new HumCoherence(100.0);
    for (int window = 0; window < 8; window++) {
      coherence.add(lines(100, 1e-3, 0, 1e-4), lines(100, 0.3, 0, 0.3), 0);
    }
    // Of 100 Hz nothing counts; what is left is the 50 Hz that both hold.
    assertThat(coherence.share(50)).isCloseTo(1, within(1e-6));
  }
}
