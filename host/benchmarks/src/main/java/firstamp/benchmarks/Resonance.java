package firstamp.benchmarks;

/**
 * Resonances one after another, driven by noise: a linear process whose spectrum is known, so that
 * the information in it can be computed as well as its values.
 */
final class Resonance {
  private final double[][] taps;
  private final double[][] state;
  private final double drive;

  /**
   * Resonances at these frequencies.
   *
   * @param hertz of each
   * @param widthHertz of each, at half power
   * @param rate values a second
   */
  Resonance(double[] hertz, double[] widthHertz, double rate) {
    taps = new double[hertz.length][2];
    state = new double[hertz.length][2];
    for (int k = 0; k < hertz.length; k++) {
      double radius = Math.exp(-Math.PI * widthHertz[k] / rate);
      taps[k][0] = 2 * radius * Math.cos(2 * Math.PI * hertz[k] / rate);
      taps[k][1] = -radius * radius;
    }
    double power = 0;
    double narrowest = rate;
    for (double width : widthHertz) {
      narrowest = Math.min(narrowest, width);
    }
    int points = (int) (16 * rate / narrowest);
    for (int k = 0; k < points; k++) {
      power += gain((k + 0.5) / points / 2) / points;
    }
    drive = 1 / Math.sqrt(power);
  }

  /** The next value, of unit power in the long run. */
  double next(double noise) {
    double value = drive * noise;
    for (int k = 0; k < taps.length; k++) {
      value += taps[k][0] * state[k][0] + taps[k][1] * state[k][1];
      state[k][1] = state[k][0];
      state[k][0] = value;
    }
    return value;
  }

  /** Power density, its mean over all frequencies 1; {@code cycles} a value, 0 to 0.5. */
  double density(double cycles) {
    return drive * drive * gain(cycles);
  }

  private double gain(double cycles) {
    double w = 2 * Math.PI * cycles;
    double gain = 1;
    for (double[] tap : taps) {
      double re = 1 - tap[0] * Math.cos(w) - tap[1] * Math.cos(2 * w);
      double im = tap[0] * Math.sin(w) + tap[1] * Math.sin(2 * w);
      gain /= re * re + im * im;
    }
    return gain;
  }
}
