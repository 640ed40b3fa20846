package firstamp.analysis.figures;

/**
 * Capacitance behind a rectifier from its ripple.
 *
 * <p>Between two charging pulses a steady current I lowers the volts in a straight line by Vpp = I
 * / (f C), f = pulses a second (100 or 120 Hz full wave, 50 or 60 half wave); the tone at f of that
 * sawtooth has the peak Vpp / pi, so C = I / (pi f V). Taken from the tone it reads 0.6 to 4 % high
 * because of the conduction angle, from peak to peak 7 to 22 % (worked out from the exact
 * waveform). Valid while Vpp is under a third of the volts and all of the current comes out of this
 * capacitor.
 */
public final class FilterCapacitance {
  /**
   * Under this share of the marked value a capacitor counts as tired (common practice, no source).
   */
  public static final double TIRED_SHARE = 0.6;

  private FilterCapacitance() {}

  /**
   * Capacitance in farad.
   *
   * @param amps load current
   * @param pulsesHz frequency of the tone
   * @param toneVrms the tone alone
   */
  public static double fromTone(double amps, double pulsesHz, double toneVrms) {
    return amps / (StrictMath.PI * pulsesHz * Math.sqrt(2) * toneVrms);
  }

  /** Ripple of the whole sawtooth, volt rms, that a good capacitor would show: Vpp / (2 sqrt 3). */
  public static double expectedVrms(double amps, double pulsesHz, double farads) {
    return amps / (pulsesHz * farads) / (2 * Math.sqrt(3));
  }

  /**
   * Whether the sawtooth behind a tone is small enough for the formula.
   *
   * @param toneVrms the tone alone
   * @param volts mean of the rail
   */
  public static boolean valid(double toneVrms, double volts) {
    return StrictMath.PI * Math.sqrt(2) * toneVrms < Math.abs(volts) / 3;
  }
}
