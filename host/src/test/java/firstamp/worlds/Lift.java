package firstamp.worlds;

/** First-order lift of the treble: 1 at low notes, {@code db} up far above {@code hz}. */
final class Lift {
  private final double gain;
  private final double pole;
  private double low;

  Lift(double db, double hz) {
    gain = Math.pow(10, db / 20);
    pole = 1 - Math.exp(-2 * Math.PI * hz * Trace.STEP_S);
  }

  double next(double sample) {
    low += pole * (sample - low);
    return low + gain * (sample - low);
  }

  /** Its gain at a frequency, from the transfer function of what next() does. */
  double at(double hz) {
    double w = 2 * Math.PI * hz * Trace.STEP_S;
    // H(z) = pole / (1 - (1 - pole) z^-1) for the low part.
    double re = 1 - (1 - pole) * Math.cos(w);
    double im = (1 - pole) * Math.sin(w);
    double size = re * re + im * im;
    double lowRe = pole * re / size;
    double lowIm = -pole * im / size;
    double sumRe = gain + (1 - gain) * lowRe;
    double sumIm = (1 - gain) * lowIm;
    return Math.hypot(sumRe, sumIm);
  }
}
