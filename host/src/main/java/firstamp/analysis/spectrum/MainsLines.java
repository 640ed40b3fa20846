package firstamp.analysis.spectrum;

/**
 * One window's spectrum at the multiples of 50 and 60 Hz up to 480 Hz, with its phases.
 *
 * <p>The middle bin of each line, volt; on a bin a sine of 1 V rms has 2/3 of its mean square there
 * (Hann window). Immutable once made.
 */
public final class MainsLines {
  private static final int HIGHEST_HZ = 480;
  private static final int OF_50 = HIGHEST_HZ / 50;
  private static final int OF_60 = HIGHEST_HZ / 60;

  /** How many lines there are. */
  static final int COUNT = OF_50 + OF_60;

  private final double[] re = new double[COUNT];
  private final double[] im = new double[COUNT];

  /**
   * Lines of one of the two signals of a spectrum.
   *
   * @param spectrum just computed
   * @param second which of the two
   * @param binHz distance of its bins
   * @param voltsPerCount scale
   */
  MainsLines(PairSpectrum spectrum, boolean second, double binHz, double voltsPerCount) {
    for (int line = 0; line < COUNT; line++) {
      int bin = (int) Math.round(hz(line) / binHz);
      re[line] = voltsPerCount * spectrum.re(second, bin);
      im[line] = voltsPerCount * spectrum.im(second, bin);
    }
  }

  /** Frequency of a line. */
  static double hz(int line) {
    return line < OF_50 ? 50.0 * (line + 1) : 60.0 * (line - OF_50 + 1);
  }

  /** Mains frequency a line belongs to. */
  static int mainsHz(int line) {
    return line < OF_50 ? 50 : 60;
  }

  /** Multiple of its mains frequency. */
  static int multiple(int line) {
    return line < OF_50 ? line + 1 : line - OF_50 + 1;
  }

  /** Whether a line lies within 10 Hz of a tone or of a multiple of it; null = no tone. */
  static boolean nearTone(int line, Double toneHz) {
    if (toneHz == null || !(toneHz > 0)) {
      return false;
    }
    double multiple = Math.max(1, Math.rint(hz(line) / toneHz));
    return Math.abs(hz(line) - multiple * toneHz) <= 10;
  }

  double re(int line) {
    return re[line];
  }

  double im(int line) {
    return im[line];
  }

  /** Mean square of a line. */
  double power(int line) {
    return re[line] * re[line] + im[line] * im[line];
  }
}
