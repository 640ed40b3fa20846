package firstamp.analysis.spectrum;

/**
 * Discrete Fourier transform of a fixed length that is a product of 2, 4 and 5.
 *
 * <p>Self-sorting mixed-radix form (Stockham; C. Van Loan, Computational Frameworks for the Fast
 * Fourier Transform, SIAM 1992, section 1.7, from memory): X<sub>k</sub> = sum over n of
 * x<sub>n</sub> exp(-2 pi i n k / N), not scaled. Lengths of 800 and 200 let 50 and 60 Hz fall on
 * bins, which a power of two does not. Not thread-safe: works in its own two arrays.
 */
public final class Fourier {
  private static final double COS_72 = StrictMath.cos(2 * StrictMath.PI / 5);
  private static final double COS_144 = StrictMath.cos(4 * StrictMath.PI / 5);
  private static final double SIN_72 = StrictMath.sin(2 * StrictMath.PI / 5);
  private static final double SIN_144 = StrictMath.sin(4 * StrictMath.PI / 5);

  private final int length;
  private final int[] radices;
  private final double[][] twiddleRe;
  private final double[][] twiddleIm;
  private double[] re;
  private double[] im;
  private double[] otherRe;
  private double[] otherIm;

  /**
   * A transform of one length.
   *
   * @param length product of the radices
   * @param radices 2, 4 or 5 each; the small inner loops run best with the largest first
   */
  public Fourier(int length, int... radices) {
    this.length = length;
    this.radices = radices.clone();
    this.re = new double[length];
    this.im = new double[length];
    this.otherRe = new double[length];
    this.otherIm = new double[length];
    this.twiddleRe = new double[radices.length][];
    this.twiddleIm = new double[radices.length][];
    int left = length;
    for (int stage = 0; stage < radices.length; stage++) {
      int radix = radices[stage];
      if (radix != 2 && radix != 4 && radix != 5 || left % radix != 0) {
        throw new IllegalArgumentException("radix " + radix + " does not fit a length of " + left);
      }
      int columns = left / radix;
      twiddleRe[stage] = new double[columns * radix];
      twiddleIm[stage] = new double[columns * radix];
      for (int p = 0; p < columns; p++) {
        for (int k = 0; k < radix; k++) {
          double angle = -2 * StrictMath.PI * (p * k % left) / left;
          twiddleRe[stage][p * radix + k] = StrictMath.cos(angle);
          twiddleIm[stage][p * radix + k] = StrictMath.sin(angle);
        }
      }
      left = columns;
    }
    if (left != 1) {
      throw new IllegalArgumentException("radices leave a factor of " + left + " of " + length);
    }
  }

  /** Number of values. */
  int length() {
    return length;
  }

  /** Real parts: to be filled before, holding the result after {@link #transform()}. */
  double[] re() {
    return re;
  }

  /** Imaginary parts, likewise. */
  double[] im() {
    return im;
  }

  /** Replaces the values by their transform; {@link #re()} and {@link #im()} may change place. */
  void transform() {
    int left = length;
    int stride = 1;
    for (int stage = 0; stage < radices.length; stage++) {
      int radix = radices[stage];
      int columns = left / radix;
      switch (radix) {
        case 2 -> by2(stage, columns, stride);
        case 4 -> by4(stage, columns, stride);
        default -> by5(stage, columns, stride);
      }
      double[] swap = re;
      re = otherRe;
      otherRe = swap;
      swap = im;
      im = otherIm;
      otherIm = swap;
      left = columns;
      stride *= radix;
    }
  }

  private void by2(int stage, int columns, int stride) {
    double[] re = this.re;
    double[] im = this.im;
    double[] toRe = otherRe;
    double[] toIm = otherIm;
    double[] wr = twiddleRe[stage];
    double[] wi = twiddleIm[stage];
    int step = stride * columns;
    for (int p = 0; p < columns; p++) {
      double cr = wr[2 * p + 1];
      double ci = wi[2 * p + 1];
      int from = stride * p;
      int to = stride * 2 * p;
      for (int q = 0; q < stride; q++) {
        double ar = re[from + q];
        double ai = im[from + q];
        double br = re[from + step + q];
        double bi = im[from + step + q];
        toRe[to + q] = ar + br;
        toIm[to + q] = ai + bi;
        double dr = ar - br;
        double di = ai - bi;
        toRe[to + stride + q] = dr * cr - di * ci;
        toIm[to + stride + q] = dr * ci + di * cr;
      }
    }
  }

  private void by4(int stage, int columns, int stride) {
    double[] re = this.re;
    double[] im = this.im;
    double[] toRe = otherRe;
    double[] toIm = otherIm;
    double[] wr = twiddleRe[stage];
    double[] wi = twiddleIm[stage];
    int step = stride * columns;
    for (int p = 0; p < columns; p++) {
      double c1r = wr[4 * p + 1];
      double c1i = wi[4 * p + 1];
      double c2r = wr[4 * p + 2];
      double c2i = wi[4 * p + 2];
      double c3r = wr[4 * p + 3];
      double c3i = wi[4 * p + 3];
      int from = stride * p;
      int to = stride * 4 * p;
      for (int q = 0; q < stride; q++) {
        int n = from + q;
        double sumEvenR = re[n] + re[n + 2 * step];
        double sumEvenI = im[n] + im[n + 2 * step];
        double difEvenR = re[n] - re[n + 2 * step];
        double difEvenI = im[n] - im[n + 2 * step];
        double sumOddR = re[n + step] + re[n + 3 * step];
        double sumOddI = im[n + step] + im[n + 3 * step];
        double difOddR = re[n + step] - re[n + 3 * step];
        double difOddI = im[n + step] - im[n + 3 * step];
        int k = to + q;
        toRe[k] = sumEvenR + sumOddR;
        toIm[k] = sumEvenI + sumOddI;
        double b1r = difEvenR + difOddI;
        double b1i = difEvenI - difOddR;
        double b2r = sumEvenR - sumOddR;
        double b2i = sumEvenI - sumOddI;
        double b3r = difEvenR - difOddI;
        double b3i = difEvenI + difOddR;
        toRe[k + stride] = b1r * c1r - b1i * c1i;
        toIm[k + stride] = b1r * c1i + b1i * c1r;
        toRe[k + 2 * stride] = b2r * c2r - b2i * c2i;
        toIm[k + 2 * stride] = b2r * c2i + b2i * c2r;
        toRe[k + 3 * stride] = b3r * c3r - b3i * c3i;
        toIm[k + 3 * stride] = b3r * c3i + b3i * c3r;
      }
    }
  }

  private void by5(int stage, int columns, int stride) {
    double[] re = this.re;
    double[] im = this.im;
    double[] toRe = otherRe;
    double[] toIm = otherIm;
    double[] wr = twiddleRe[stage];
    double[] wi = twiddleIm[stage];
    int step = stride * columns;
    // In the first stage every column is on its own: one loop over them then, not one for each.
    boolean first = stride == 1;
    int loops = first ? 1 : columns;
    int turns = first ? columns : stride;
    int apart = first ? 5 : 1;
    int turn = first ? 5 : 0;
    for (int p = 0; p < loops; p++) {
      int from = stride * p;
      int to = stride * 5 * p;
      for (int q = 0; q < turns; q++) {
        int n = from + q;
        int w = 5 * p + turn * q;
        double s1r = re[n + step] + re[n + 4 * step];
        double s1i = im[n + step] + im[n + 4 * step];
        double d1r = re[n + step] - re[n + 4 * step];
        double d1i = im[n + step] - im[n + 4 * step];
        double s2r = re[n + 2 * step] + re[n + 3 * step];
        double s2i = im[n + 2 * step] + im[n + 3 * step];
        double d2r = re[n + 2 * step] - re[n + 3 * step];
        double d2i = im[n + 2 * step] - im[n + 3 * step];
        double xr = re[n];
        double xi = im[n];
        double a1r = xr + COS_72 * s1r + COS_144 * s2r;
        double a1i = xi + COS_72 * s1i + COS_144 * s2i;
        double a2r = xr + COS_144 * s1r + COS_72 * s2r;
        double a2i = xi + COS_144 * s1i + COS_72 * s2i;
        double e1r = SIN_72 * d1r + SIN_144 * d2r;
        double e1i = SIN_72 * d1i + SIN_144 * d2i;
        double e2r = SIN_144 * d1r - SIN_72 * d2r;
        double e2i = SIN_144 * d1i - SIN_72 * d2i;
        int k = to + apart * q;
        toRe[k] = xr + s1r + s2r;
        toIm[k] = xi + s1i + s2i;
        double b1r = a1r + e1i;
        double b1i = a1i - e1r;
        toRe[k + stride] = b1r * wr[w + 1] - b1i * wi[w + 1];
        toIm[k + stride] = b1r * wi[w + 1] + b1i * wr[w + 1];
        double b2r = a2r + e2i;
        double b2i = a2i - e2r;
        toRe[k + 2 * stride] = b2r * wr[w + 2] - b2i * wi[w + 2];
        toIm[k + 2 * stride] = b2r * wi[w + 2] + b2i * wr[w + 2];
        double b3r = a2r - e2i;
        double b3i = a2i + e2r;
        toRe[k + 3 * stride] = b3r * wr[w + 3] - b3i * wi[w + 3];
        toIm[k + 3 * stride] = b3r * wi[w + 3] + b3i * wr[w + 3];
        double b4r = a1r - e1i;
        double b4i = a1i + e1r;
        toRe[k + 4 * stride] = b4r * wr[w + 4] - b4i * wi[w + 4];
        toIm[k + 4 * stride] = b4r * wi[w + 4] + b4i * wr[w + 4];
      }
    }
  }
}
