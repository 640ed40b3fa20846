package firstamp.analysis.spectrum;

/**
 * Bands of a third of an octave from 63 Hz to 1.6 kHz (IEC 61260-1, base ten, from memory: mid-band
 * 1000 Hz times 10^(n/10), edges a twentieth of a decade off), on bins of 5 Hz; the last one ends
 * at 1600 Hz, where the levels do.
 */
public final class ThirdOctaves {
  /** How many. */
  public static final int COUNT = 15;

  private static final int FIRST = -12;
  private static final int[] EDGES = edges();

  private ThirdOctaves() {}

  private static int[] edges() {
    int[] edges = new int[COUNT + 1];
    for (int band = 0; band <= COUNT; band++) {
      double hz = 1000 * StrictMath.pow(10, (FIRST + band - 0.5) / 10);
      edges[band] = (int) Math.ceil(hz / LevelMeter.BIN_HZ);
    }
    edges[COUNT] = LevelMeter.HIGHEST_BIN + 1;
    return edges;
  }

  /** Exact mid-band frequency. */
  public static double hz(int band) {
    return 1000 * StrictMath.pow(10, (FIRST + band) / 10.0);
  }

  /** How many bins a band holds. */
  public static int bins(int band) {
    return EDGES[band + 1] - EDGES[band];
  }

  /** Power in each band, times a factor. */
  static double[] powers(double[] binPower, double factor) {
    double[] powers = new double[COUNT];
    for (int band = 0; band < COUNT; band++) {
      powers[band] = factor * PairSpectrum.band(binPower, EDGES[band], EDGES[band + 1] - 1);
    }
    return powers;
  }
}
