package firstamp.model.samples;

/**
 * Ripple of one rail over one window of 200 ms.
 *
 * @param rail 1 to 3
 * @param firstIndex conversion index of the window's begin
 * @param endIndex conversion index after it
 * @param meanV mean of the rail
 * @param mainsHz 50 or 60, whichever holds more
 * @param rms1V tone at mainsHz and its odd multiples, volt rms, noise removed
 * @param rms2V tone at twice mainsHz and its multiples, volt rms, noise removed
 * @param rmsV both together, volt rms
 * @param noiseFloorV what noise alone would give
 * @param tone1V the tone at mainsHz alone, without multiples
 * @param tone2V the tone at twice mainsHz alone
 */
public record RippleWindow(
    int rail,
    long firstIndex,
    long endIndex,
    double meanV,
    int mainsHz,
    double rms1V,
    double rms2V,
    double rmsV,
    double noiseFloorV,
    double tone1V,
    double tone2V) {

  /** Ripple that is one sine: no multiples. */
  public RippleWindow(
      int rail,
      long firstIndex,
      long endIndex,
      double meanV,
      int mainsHz,
      double rms1V,
      double rms2V,
      double rmsV,
      double noiseFloorV) {
    this(rail, firstIndex, endIndex, meanV, mainsHz, rms1V, rms2V, rmsV, noiseFloorV, rms1V, rms2V);
  }
}
