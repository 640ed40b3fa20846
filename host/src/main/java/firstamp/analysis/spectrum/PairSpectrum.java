package firstamp.analysis.spectrum;

/**
 * Power spectra of two real signals of one length, taken with one transform.
 *
 * <p>Hann window, 0.5 - 0.5 cos(2 pi n / N): coherent gain 0.5, equivalent noise bandwidth 1.5 bins
 * (F. J. Harris, Proceedings of the IEEE 66(1), 1978, table I). {@link #powerA()}[k] is the mean
 * square that bin k stands for: a sine's mean square is the sum over the five bins around it, noise
 * sums to its own over any stretch of bins. The dc term stays within bins 0 and 1.
 *
 * <p>Not thread-safe.
 */
public final class PairSpectrum {
  private final Fourier fourier;
  private final double[] window;
  private final double[] powerA;
  private final double[] powerB;
  private double amplitude;

  /** Spectra by this transform. */
  public PairSpectrum(Fourier fourier) {
    this.fourier = fourier;
    int n = fourier.length();
    this.window = CosineWindow.HANN.of(n);
    this.powerA = new double[n / 2];
    this.powerB = new double[n / 2];
  }

  /** Computes both spectra; the arrays are only read. */
  public void compute(double[] a, double[] b) {
    double[] re = fourier.re();
    double[] im = fourier.im();
    int n = window.length;
    for (int i = 0; i < n; i++) {
      re[i] = a[i] * window[i];
      im[i] = b[i] * window[i];
    }
    fourier.transform();
    re = fourier.re();
    im = fourier.im();
    // One-sided: 2 |X|^2 / (sum of the window)^2, over the noise bandwidth of 1.5 bins.
    double scale = 2 / (0.25 * n * n) / 1.5;
    for (int k = 1; k < n / 2; k++) {
      double ar = 0.5 * (re[k] + re[n - k]);
      double ai = 0.5 * (im[k] - im[n - k]);
      double br = 0.5 * (im[k] + im[n - k]);
      double bi = 0.5 * (re[n - k] - re[k]);
      powerA[k] = scale * (ar * ar + ai * ai);
      powerB[k] = scale * (br * br + bi * bi);
    }
    amplitude = Math.sqrt(scale);
  }

  /** Mean square of the first signal per bin; valid until the next computation. */
  public double[] powerA() {
    return powerA;
  }

  /** Mean square of the second signal per bin. */
  public double[] powerB() {
    return powerB;
  }

  /** Real part of a bin of the first or second signal; its square adds to the bin's power. */
  double re(boolean second, int bin) {
    double[] re = fourier.re();
    double[] im = fourier.im();
    int mirror = window.length - bin;
    return amplitude * 0.5 * (second ? im[bin] + im[mirror] : re[bin] + re[mirror]);
  }

  /** Imaginary part of it. */
  double im(boolean second, int bin) {
    double[] re = fourier.re();
    double[] im = fourier.im();
    int mirror = window.length - bin;
    return amplitude * 0.5 * (second ? re[mirror] - re[bin] : im[bin] - im[mirror]);
  }

  /** Sum over bins, both ends included. */
  public static double band(double[] power, int from, int to) {
    double sum = 0;
    for (int k = from; k <= to; k++) {
      sum += power[k];
    }
    return sum;
  }
}
