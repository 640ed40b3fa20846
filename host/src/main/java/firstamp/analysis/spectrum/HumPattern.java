package firstamp.analysis.spectrum;

/**
 * Which multiples of the mains the hum in the head holds: mean power line by line. Not thread-safe.
 */
public final class HumPattern {
  private static final double CLEARLY = 0.8;
  private static final double BUZZ_SHARE = 0.5;
  private static final int BUZZ_MULTIPLE = 3;

  private final Double toneHz;
  private final double[] power = new double[MainsLines.COUNT];
  private int count;

  /** Kinds of hum (trade practice: what each points to). */
  public enum Kind {
    /**
     * Nearly all at the mains frequency and its odd multiples: a field, a heater, an open ground.
     */
    MAINS,
    /** Nearly all at twice the mains and its multiples: behind a rectifier. */
    TWICE,
    /** Most of it at three times the mains and above: sparks, rectifier spikes, a dry capacitor. */
    BUZZ,
    /** Some of each. */
    MIXED
  }

  /**
   * Empty sums.
   *
   * @param toneHz lines within 10 Hz of it or of a multiple are left out; null = none
   */
  public HumPattern(Double toneHz) {
    this.toneHz = toneHz;
  }

  public HumPattern copy() {
    HumPattern copy = new HumPattern(toneHz);
    System.arraycopy(power, 0, copy.power, 0, power.length);
    copy.count = count;
    return copy;
  }

  /**
   * Takes a window.
   *
   * @param noise mean square that noise alone puts into a line
   */
  public void add(MainsLines lines, double noise) {
    count++;
    for (int line = 0; line < power.length; line++) {
      power[line] += lines.power(line) - noise;
    }
  }

  /** Mean square of a line, noise taken off, never under 0. */
  double power(int line) {
    return count == 0 || MainsLines.nearTone(line, toneHz) ? 0 : Math.max(0, power[line] / count);
  }

  /**
   * The kind of hum.
   *
   * @param mainsHz 50 or 60
   * @return null if nothing stands out of the noise
   */
  public Kind kind(int mainsHz) {
    double[] sums = new double[3];
    for (int line = 0; line < power.length; line++) {
      if (MainsLines.mainsHz(line) == mainsHz) {
        int multiple = MainsLines.multiple(line);
        int group = multiple >= BUZZ_MULTIPLE ? 2 : multiple - 1;
        sums[group] += power(line);
      }
    }
    double all = sums[0] + sums[1] + sums[2];
    if (!(all > 0)) {
      return null;
    }
    if (sums[2] > BUZZ_SHARE * all) {
      return Kind.BUZZ;
    }
    double even = 0;
    for (int line = 0; line < power.length; line++) {
      boolean counts = MainsLines.mainsHz(line) == mainsHz && MainsLines.multiple(line) % 2 == 0;
      even += counts ? power(line) : 0;
    }
    return even > CLEARLY * all ? Kind.TWICE : even < (1 - CLEARLY) * all ? Kind.MAINS : Kind.MIXED;
  }
}
