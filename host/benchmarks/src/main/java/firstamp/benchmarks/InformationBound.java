package firstamp.benchmarks;

/**
 * The fewest bits a value that any coder can reach on {@link SetSignal}, computed from what made
 * the values, not from the values.
 *
 * <p>A stationary Gaussian process of spectral density S (power a value) in unit steps holds
 *
 * <pre>  h = log2(2 pi e) / 2 + (1/2) * integral of log2 S(f) df, f = 0 .. 1 cycles a value</pre>
 *
 * bits a value (Kolmogorov; Cover and Thomas, Elements of Information Theory, 2nd ed., section
 * 12.5, quoted from memory); for head and meter together det S takes the place of S. The noise and
 * the rounding to whole counts add their variances, 0.7^2 + 1/12, to every channel: for rounding
 * that is the exact mean over all places between two counts to better than 0.001 bit, as the noise
 * is wider than half a count. Tones, levels and envelopes count as known, and for the fine current
 * and the rails nothing but noise is counted: the bound is a little too low, never too high.
 */
final class InformationBound {
  private static final double LN2 = Math.log(2);
  private static final double FLOOR = SetSignal.NOISE_COUNTS * SetSignal.NOISE_COUNTS + 1.0 / 12;
  private static final double NOISE_BITS = 0.5 * Math.log(2 * Math.PI * Math.E * FLOOR) / LN2;
  private static final int POINTS = 512;
  private static final int LEVELS = 33;

  private final double headGain;
  private final double meterGain;
  private final double[] motorBits = new double[LEVELS];
  private final double[] programBits = new double[LEVELS];
  private double bits;

  /**
   * Nothing made yet.
   *
   * @param headGain counts of the head for one of the program
   * @param meterGain the same of the meter
   * @param motor what makes the ripple of the current
   * @param motorCounts how strong each part is at full speed, on the coarse channel
   */
  InformationBound(double headGain, double meterGain, Resonance[] motor, double[] motorCounts) {
    this.headGain = headGain;
    this.meterGain = meterGain;
    for (int level = 0; level < LEVELS; level++) {
      double speed = (double) level / (LEVELS - 1);
      int points = 16 * POINTS; // The motor's lines are narrow.
      for (int p = 0; p < points; p++) {
        double ripple = 0;
        for (int m = 0; m < motor.length; m++) {
          ripple += Math.pow(speed * motorCounts[m], 2) * motor[m].density((p + 0.5) / points / 2);
        }
        motorBits[level] += Math.log(1 + ripple / FLOOR) / LN2 / 2 / points;
      }
    }
  }

  /** What follows has this spectrum, and this level at its loudest. */
  void syllable(Resonance voice, double counts) {
    java.util.Arrays.fill(programBits, 0);
    for (int p = 0; p < POINTS; p++) {
      double f = (p + 0.5) / POINTS / 2;
      // |0.75 + 0.25 exp(i w)|^2: the meter's delay against the head.
      double delay = 0.625 + 0.375 * Math.cos(2 * Math.PI * f);
      double gain = headGain * headGain + meterGain * meterGain * delay;
      double loudest = counts * counts * voice.density(f) * gain / FLOOR;
      for (int level = 1; level < LEVELS; level++) {
        double share = (double) level / (LEVELS - 1);
        programBits[level] += Math.log(1 + share * share * loudest) / LN2 / 2 / POINTS;
      }
    }
  }

  /** A head and a meter value were made, at this share of the loudest; 0 = nothing but tones. */
  void program(double share) {
    bits += 2 * NOISE_BITS;
    if (share > 0) {
      bits += programBits[(int) Math.round(share * (LEVELS - 1))];
    }
  }

  /** A coarse current was made, and the value in the fourth slot. */
  void motor(double speed) {
    bits += 2 * NOISE_BITS + motorBits[(int) Math.round(speed * (LEVELS - 1))];
  }

  double bits() {
    return bits;
  }
}
