package firstamp.analysis.spectrum;

/**
 * One bin of a Fourier transform at any frequency, by the recursion s(n) = x(n) + 2 cos(w) s(n-1) -
 * s(n-2) (G. Goertzel, American Mathematical Monthly 65, 1958, from memory).
 */
public final class Goertzel {
  private final double coefficient;

  /**
   * A bin.
   *
   * @param cyclesPerSample frequency over sample rate, 0 to 0.5
   */
  public Goertzel(double cyclesPerSample) {
    this.coefficient = 2 * StrictMath.cos(2 * StrictMath.PI * cyclesPerSample);
  }

  /** 2 cos(w). */
  public double coefficient() {
    return coefficient;
  }

  /** Magnitude of the transform of all samples, each times its weight. */
  public double magnitude(double[] samples, double[] weights) {
    double last = 0;
    double before = 0;
    for (int n = 0; n < samples.length; n++) {
      double next = samples[n] * weights[n] + coefficient * last - before;
      before = last;
      last = next;
    }
    return Math.sqrt(Math.max(0, last * last + before * before - coefficient * last * before));
  }
}
