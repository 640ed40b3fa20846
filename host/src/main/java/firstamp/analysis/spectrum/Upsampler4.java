package firstamp.analysis.spectrum;

import java.util.Arrays;

/**
 * Three samples between each two: a signal that ends well under half of its sample rate, at four
 * times that rate.
 *
 * <p>A rectifier needs this: at four samples a period the mean of their magnitudes depends on their
 * phase by a sixth. A sinc of 16 taps under a Hann window; a sine keeps its amplitude within 1 % up
 * to 0.31 of the sample rate and within 5 % at 0.4. Eight samples late. Seven digits are more than
 * a needle shows: numbers of 32 bits. Not thread-safe.
 */
final class Upsampler4 {
  /** Taps for each of the places between two samples. */
  private static final int TAPS = 16;

  private static final float[][] WEIGHTS = weights();

  /** Taps that are added in one go. */
  private static final int AT_ONCE = 4;

  /** Samples for which that is done before the next: what they need stays in the cache. */
  private static final int PIECE = 200;

  private final int length;
  private final float[] line;
  private final float[][] shifted = new float[AT_ONCE][PIECE];
  private final float[][] sums = new float[4][PIECE];
  private final float[][] between;

  /**
   * Silence before the first sample.
   *
   * @param length samples taken at a time
   */
  Upsampler4(int length) {
    this.length = length;
    this.line = new float[TAPS - 1 + length];
    this.between = new float[4][length];
  }

  private static float[][] weights() {
    float[][] weights = new float[4][TAPS];
    for (int place = 0; place < 4; place++) {
      double[] exact = new double[TAPS];
      double sum = 0;
      for (int tap = 0; tap < TAPS; tap++) {
        // Distance of the sample from the place, in samples.
        double x = tap - (TAPS / 2 - 1) - place / 4.0;
        double sinc = x == 0 ? 1 : StrictMath.sin(StrictMath.PI * x) / (StrictMath.PI * x);
        double window = 0.5 + 0.5 * StrictMath.cos(2 * StrictMath.PI * x / TAPS);
        exact[tap] = sinc * window;
        sum += exact[tap];
      }
      for (int tap = 0; tap < TAPS; tap++) {
        weights[place][tap] = (float) (exact[tap] / sum);
      }
    }
    return weights;
  }

  /**
   * Takes the next samples and gives the signal about eight samples before each.
   *
   * @param samples as many as given to the constructor
   * @return [0 to 3][sample]: on a sample and the quarters after it; valid until the next call
   */
  float[][] at(float[] samples) {
    System.arraycopy(line, length, line, 0, TAPS - 1);
    System.arraycopy(samples, 0, line, TAPS - 1, length);
    // On a sample all the weights but its own are 0.
    System.arraycopy(line, TAPS / 2 - 1, between[0], 0, length);
    for (int from = 0; from < length; from += PIECE) {
      int count = Math.min(PIECE, length - from);
      for (int tap = 0; tap < TAPS; tap += AT_ONCE) {
        for (int k = 0; k < AT_ONCE; k++) {
          System.arraycopy(line, from + tap + k, shifted[k], 0, count);
        }
        for (int place = 1; place < 4; place++) {
          if (tap == 0) {
            Arrays.fill(sums[place], 0);
          }
          addFour(WEIGHTS[place], tap, sums[place]);
        }
      }
      for (int place = 1; place < 4; place++) {
        System.arraycopy(sums[place], 0, between[place], from, count);
      }
    }
    return between;
  }

  /**
   * Four taps for every sample. The line lies there once for each, so that all are read at the same
   * place: only then does the virtual machine take several samples at a time.
   */
  private void addFour(float[] weights, int tap, float[] out) {
    float w0 = weights[tap];
    float w1 = weights[tap + 1];
    float w2 = weights[tap + 2];
    float w3 = weights[tap + 3];
    float[] in0 = shifted[0];
    float[] in1 = shifted[1];
    float[] in2 = shifted[2];
    float[] in3 = shifted[3];
    for (int i = 0; i < out.length; i++) {
      out[i] = out[i] + w0 * in0[i] + w1 * in1[i] + w2 * in2[i] + w3 * in3[i];
    }
  }
}
