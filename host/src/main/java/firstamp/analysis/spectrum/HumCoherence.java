package firstamp.analysis.spectrum;

/**
 * How much of the hum in the head goes in step with the ripple of one rail.
 *
 * <p>Magnitude-squared coherence per line over windows, |sum of H conj R|^2 / (sum |H|^2 sum
 * |R|^2), and from it the power in the head that a fixed relation to the rail explains (J. S.
 * Bendat, A. G. Piersol, Random Data, coherent output power, from memory). With N windows chance
 * alone gives more than 1 - 0.05^(1/(N-1)) once in twenty (G. C. Carter, C. H. Knapp, A. H. Nuttall
 * 1973, from memory): a line counts above that, and only where the rail itself holds at least 3 %
 * of its ripple there; everything fed from the mains is in step with it, so a trace of 50 Hz on a
 * rail must not explain a strong 50 Hz in the head. Not thread-safe.
 */
public final class HumCoherence {
  /** Fewer windows say nothing. */
  static final int LEAST_WINDOWS = 5;

  private static final double CHANCE = 0.05;
  private static final double LEAST_RAIL_SHARE = 0.03;

  private final Double toneHz;
  private final double[] crossRe = new double[MainsLines.COUNT];
  private final double[] crossIm = new double[MainsLines.COUNT];
  private final double[] head = new double[MainsLines.COUNT];
  private final double[] rail = new double[MainsLines.COUNT];
  private double noise;
  private int count;

  /**
   * Empty sums.
   *
   * @param toneHz lines within 10 Hz of it or of a multiple are left out; null = none
   */
  public HumCoherence(Double toneHz) {
    this.toneHz = toneHz;
  }

  public HumCoherence copy() {
    HumCoherence copy = new HumCoherence(toneHz);
    System.arraycopy(crossRe, 0, copy.crossRe, 0, crossRe.length);
    System.arraycopy(crossIm, 0, copy.crossIm, 0, crossIm.length);
    System.arraycopy(head, 0, copy.head, 0, head.length);
    System.arraycopy(rail, 0, copy.rail, 0, rail.length);
    copy.noise = noise;
    copy.count = count;
    return copy;
  }

  /**
   * Takes a window of both.
   *
   * @param headNoise mean square that noise alone puts into one line of the head
   */
  public void add(MainsLines headLines, MainsLines railLines, double headNoise) {
    count++;
    noise += headNoise;
    for (int line = 0; line < MainsLines.COUNT; line++) {
      double hr = headLines.re(line);
      double hi = headLines.im(line);
      double rr = railLines.re(line);
      double ri = railLines.im(line);
      crossRe[line] += hr * rr + hi * ri;
      crossIm[line] += hi * rr - hr * ri;
      head[line] += hr * hr + hi * hi;
      rail[line] += rr * rr + ri * ri;
    }
  }

  public int windows() {
    return count;
  }

  /** Coherence of a line, 0 to 1. */
  double coherence(int line) {
    double both = head[line] * rail[line];
    double cross = crossRe[line] * crossRe[line] + crossIm[line] * crossIm[line];
    return both > 0 ? Math.min(1, cross / both) : 0;
  }

  /** What chance alone reaches once in twenty. */
  static double chance(int windows) {
    return 1 - StrictMath.pow(CHANCE, 1.0 / (windows - 1));
  }

  /**
   * Share of the head's hum that goes in step with the rail, 0 to 1.
   *
   * @param mainsHz 50 or 60
   * @return null for too few windows, or where the head holds no hum above the noise
   */
  public Double share(int mainsHz) {
    if (count < LEAST_WINDOWS) {
      return null;
    }
    double railAll = 0;
    double headAll = 0;
    for (int line = 0; line < MainsLines.COUNT; line++) {
      if (counts(line, mainsHz)) {
        railAll += rail[line];
        headAll += Math.max(0, head[line] - noise);
      }
    }
    double inStep = 0;
    for (int line = 0; line < MainsLines.COUNT; line++) {
      double coherence = coherence(line);
      if (counts(line, mainsHz)
          && coherence > chance(count)
          && rail[line] > LEAST_RAIL_SHARE * railAll) {
        inStep += coherence * Math.max(0, head[line] - noise);
      }
    }
    return headAll > noise ? (Double) (inStep / headAll) : null;
  }

  private boolean counts(int line, int mainsHz) {
    return MainsLines.mainsHz(line) == mainsHz && !MainsLines.nearTone(line, toneHz);
  }
}
