package firstamp.analysis.spectrum;

/**
 * A window made of cosines, w(n) = a0 - a1 cos(2 pi n / N) + a2 cos(4 pi n / N) - ..., and what it
 * does to a spectrum (F. J. Harris, Proceedings of the IEEE 66(1), 1978).
 */
public final class CosineWindow {
  /** Coherent gain 0.5, noise bandwidth 1.5 bins: for powers summed over bins. */
  public static final CosineWindow HANN = new CosineWindow(0.5, 0.5);

  /**
   * Five terms, loses 0.01 dB half a bin off: for the amplitude of a tone that lies between bins
   * (coefficients as in scipy.signal.windows.flattop).
   */
  static final CosineWindow FLAT_TOP =
      new CosineWindow(0.21557895, 0.41663158, 0.277263158, 0.083578947, 0.006947368);

  private final double[] terms;

  public CosineWindow(double... terms) {
    this.terms = terms.clone();
  }

  /** One period of it. */
  public double[] of(int length) {
    double[] window = new double[length];
    for (int n = 0; n < length; n++) {
      window[n] = terms[0];
      for (int k = 1; k < terms.length; k++) {
        double part = terms[k] * StrictMath.cos(2 * StrictMath.PI * k * n / length);
        window[n] += k % 2 == 1 ? -part : part;
      }
    }
    return window;
  }

  /** What a sine on a bin is scaled by. */
  public double coherentGain() {
    return terms[0];
  }

  /** Width of the rectangle that passes as much noise, bins. */
  public double noiseBandwidthBins() {
    double squares = 2 * terms[0] * terms[0];
    for (int k = 1; k < terms.length; k++) {
      squares += terms[k] * terms[k];
    }
    return squares / 2 / (terms[0] * terms[0]);
  }
}
