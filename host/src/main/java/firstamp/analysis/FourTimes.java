package firstamp.analysis;

/**
 * Three samples between each two: a signal that ends well under half of its sample rate, at four
 * times that rate.
 *
 * <p>A rectifier needs this: at four samples a period the mean of their magnitudes hangs on their
 * phase by a sixth. A sinc of 16 taps under a Hann window; a sine keeps its amplitude within 1 % up
 * to 0.31 of the sample rate and within 5 % at 0.4. Eight samples late. Not thread-safe.
 */
final class FourTimes {
  /** Taps for each of the places between two samples. */
  private static final int TAPS = 16;

  private static final double[][] WEIGHTS = weights();

  private final double[] last = new double[TAPS];
  private int newest;

  private static double[][] weights() {
    double[][] weights = new double[4][TAPS];
    for (int place = 0; place < 4; place++) {
      double sum = 0;
      for (int tap = 0; tap < TAPS; tap++) {
        // Distance of the sample from the place, in samples.
        double x = tap - (TAPS / 2 - 1) - place / 4.0;
        double sinc = x == 0 ? 1 : StrictMath.sin(StrictMath.PI * x) / (StrictMath.PI * x);
        double window = 0.5 + 0.5 * StrictMath.cos(2 * StrictMath.PI * x / TAPS);
        weights[place][tap] = sinc * window;
        sum += weights[place][tap];
      }
      for (int tap = 0; tap < TAPS; tap++) {
        weights[place][tap] /= sum;
      }
    }
    return weights;
  }

  /** Takes the next sample. */
  void put(double sample) {
    newest = (newest + 1) % TAPS;
    last[newest] = sample;
  }

  /**
   * The signal about eight samples ago.
   *
   * @param place 0 to 3: on a sample and the quarters after it
   */
  double at(int place) {
    double sum = 0;
    double[] weights = WEIGHTS[place];
    for (int tap = 0; tap < TAPS; tap++) {
      sum += weights[tap] * last[(newest + 1 + tap) % TAPS];
    }
    return sum;
  }
}
