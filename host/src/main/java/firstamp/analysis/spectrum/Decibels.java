package firstamp.analysis.spectrum;

/**
 * Levels in decibels. 0 dBV = 1 V rms; 0 dBu = sqrt(0.6) V rms, 1 mW in 600 ohm (IEC 60268-2, from
 * memory).
 */
public final class Decibels {
  /** 0 dBu in volt rms. */
  public static final double DBU_ZERO_V = Math.sqrt(0.6);

  private Decibels() {}

  /** Level of volts rms against 1 V; above 0 only. */
  public static double dbv(double volts) {
    return ratio(volts, 1);
  }

  /** Level of volts rms against sqrt(0.6) V. */
  public static double dbu(double volts) {
    return ratio(volts, DBU_ZERO_V);
  }

  /** Volts rms of a level against 1 V. */
  public static double voltsOfDbv(double dbv) {
    return StrictMath.pow(10, dbv / 20);
  }

  /** 20 lg of a ratio of two amplitudes. */
  public static double ratio(double amplitude, double reference) {
    return 20 * StrictMath.log10(amplitude / reference);
  }
}
