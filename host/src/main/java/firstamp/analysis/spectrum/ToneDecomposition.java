package firstamp.analysis.spectrum;

/**
 * Takes the head's band 30 to 1600 Hz apart into tone, harmonics and noise.
 *
 * <p>Tone and harmonics are read by single bins at their own frequencies through a flat-top window:
 * a tone up to 2.5 Hz off keeps its amplitude. The noise is the mean of all bins that are neither
 * within 15 Hz of a multiple of the tone (40 of itself: what lies off a bin leaks) nor within 5 Hz
 * of one of 50 or 60 Hz, over the whole band; what that density puts into a single bin is taken off
 * the harmonics.
 */
final class ToneDecomposition {
  private static final int MOST_HARMONICS = 5;
  private static final double SAMPLES_PER_SECOND = 4000;

  private final double[] weights;
  private final Goertzel[] multiples;
  private final boolean[] free = new boolean[LevelMeter.HIGHEST_BIN + 1];
  private final int freeBins;

  /**
   * A split for one tone.
   *
   * @param toneHz of the sheet
   * @param samples in a window
   */
  ToneDecomposition(double toneHz, int samples) {
    this.weights = CosineWindow.FLAT_TOP.of(samples);
    int count = Math.min(MOST_HARMONICS, (int) (1600 / toneHz));
    this.multiples = new Goertzel[Math.max(1, count)];
    for (int k = 0; k < multiples.length; k++) {
      multiples[k] = new Goertzel(toneHz * (k + 1) / SAMPLES_PER_SECOND);
    }
    int bins = 0;
    for (int bin = LevelMeter.LOWEST_BIN; bin <= LevelMeter.HIGHEST_BIN; bin++) {
      double hz = bin * LevelMeter.BIN_HZ;
      free[bin] =
          !near(hz, toneHz, 15)
              && Math.abs(hz - toneHz) > 40
              && !near(hz, 50, 5)
              && !near(hz, 60, 5);
      bins += free[bin] ? 1 : 0;
    }
    this.freeBins = bins;
  }

  private static boolean near(double hz, double base, double within) {
    double multiple = Math.max(1, Math.rint(hz / base));
    return Math.abs(hz - multiple * base) <= within;
  }

  /**
   * Splits one window.
   *
   * @param samples of the head, counts about its middle
   * @param power its spectrum, counts squared
   * @param voltsPerCount scale
   */
  LevelDetail.Split of(double[] samples, double[] power, double voltsPerCount) {
    double density = 0;
    for (int bin = LevelMeter.LOWEST_BIN; bin <= LevelMeter.HIGHEST_BIN; bin++) {
      density += free[bin] ? power[bin] : 0;
    }
    density /= Math.max(1, freeBins);
    double[] squares = new double[multiples.length];
    double full = CosineWindow.FLAT_TOP.coherentGain() * samples.length / 2;
    for (int k = 0; k < multiples.length; k++) {
      double amplitude = multiples[k].magnitude(samples, weights) / full;
      squares[k] = amplitude * amplitude / 2;
    }
    double harmonics = 0;
    for (int k = 1; k < squares.length; k++) {
      harmonics += squares[k] - density * CosineWindow.FLAT_TOP.noiseBandwidthBins();
    }
    double scale = voltsPerCount * voltsPerCount;
    int bins = LevelMeter.HIGHEST_BIN - LevelMeter.LOWEST_BIN + 1;
    return new LevelDetail.Split(
        squares[0] * scale, Math.max(0, harmonics) * scale, density * bins * scale);
  }
}
