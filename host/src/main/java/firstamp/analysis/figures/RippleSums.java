package firstamp.analysis.figures;

import firstamp.model.samples.RippleWindow;

/** Mean powers of a rail's ripple over windows. Not thread-safe. */
public final class RippleSums {
  private int count;
  private double noise;
  private final double[] tone1 = new double[2];
  private final double[] tone2 = new double[2];
  private final double[] all = new double[2];
  private final double[] first = new double[2];
  private final double[] second = new double[2];

  RippleSums copy() {
    RippleSums copy = new RippleSums();
    copy.count = count;
    copy.noise = noise;
    System.arraycopy(tone1, 0, copy.tone1, 0, 2);
    System.arraycopy(tone2, 0, copy.tone2, 0, 2);
    System.arraycopy(all, 0, copy.all, 0, 2);
    System.arraycopy(first, 0, copy.first, 0, 2);
    System.arraycopy(second, 0, copy.second, 0, 2);
    return copy;
  }

  public void add(RippleWindow window) {
    count++;
    noise += window.noiseFloorV() * window.noiseFloorV();
    int mains = window.mainsHz() == 60 ? 1 : 0;
    tone1[mains] += window.tone1V() * window.tone1V();
    tone2[mains] += window.tone2V() * window.tone2V();
    all[mains] += window.rmsV() * window.rmsV();
    first[mains] += window.rms1V() * window.rms1V();
    second[mains] += window.rms2V() * window.rms2V();
  }

  /** Mean over the windows, null if there were none or nothing stands out of the noise. */
  public Ripple mean() {
    if (count == 0) {
      return null;
    }
    int mains = all[1] > all[0] ? 1 : 0;
    double one = Math.sqrt(first[mains] / count);
    double two = Math.sqrt(second[mains] / count);
    double power = all[mains] / count;
    // Noise alone leaves 0.14 of itself on average (what is below 0 counts as 0) and scatters by a
    // third of itself from window to window.
    if (!(power > noise / count * (0.2 + 1 / Math.sqrt(count)))) {
      return null;
    }
    int mainsHz = mains == 1 ? 60 : 50;
    double tone = Math.sqrt((two >= one ? tone2 : tone1)[mains] / count);
    double toneHz = two >= one ? 2.0 * mainsHz : mainsHz;
    return new Ripple(mainsHz, one, two, Math.sqrt(power), tone, toneHz);
  }

  /**
   * Ripple of a rail.
   *
   * @param mainsHz 50 or 60
   * @param rms1V at mainsHz and its odd multiples
   * @param rms2V at twice mainsHz and its multiples
   * @param rmsV all together
   * @param toneVrms the strongest tone alone
   * @param strongestHz its frequency, mainsHz or twice that
   */
  public record Ripple(
      int mainsHz, double rms1V, double rms2V, double rmsV, double toneVrms, double strongestHz) {}
}
