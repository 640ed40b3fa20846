package firstamp.sheet;

import firstamp.model.JobSheet;
import firstamp.model.SourceOhm;

/**
 * The surge into empty filter capacitors where nothing but resistance holds it, and the resistor
 * that keeps it under what the switch is for. {@code Ip = V / R}, energy {@code C V^2 / 2}.
 *
 * <p>What feeds the set has at least {@link SourceOhm}.
 *
 * @param ampere computed surge
 * @param ohm resistor to put in series, from the E12 row
 * @param watt rating it needs
 * @param joule it takes in the surge
 */
public record Surge(double ampere, double ohm, double watt, double joule) {
  /** Above it the resistor is asked for: just under the level of the probe's comparator. */
  public static final double HIGHEST_A = 9;

  /** A shorter surge is over before the comparator has seen it. */
  private static final double SHORTEST_S = 10e-6;

  private static final double[] ROW = {1, 1.2, 1.5, 1.8, 2.2, 2.7, 3.3, 3.9, 4.7, 5.6, 6.8, 8.2};
  private static final double[] WATTS = {1, 2, 5, 10, 25, 50, 100};

  /**
   * What a sheet (filled or not) makes of it; null = the surge stays under 9 A, or C is unknown.
   */
  public static Surge of(JobSheet sheet) {
    JobSheet.Supply supply = sheet.supply();
    double farad = farad(sheet);
    boolean held = supply.limitA() != null && supply.limitA() <= HIGHEST_A;
    if (farad == 0 || held || "lamp".equals(supply.through())) {
      return null;
    }
    double source = SourceOhm.of(supply);
    double ampere = supply.nominalV() / source;
    if (supply.limitA() != null) {
      ampere = Math.min(ampere, supply.limitA());
    }
    if (ampere <= HIGHEST_A || source * farad < SHORTEST_S) {
      return null;
    }
    double ohm = rounded(supply.nominalV() / HIGHEST_A - source);
    double joule = 0.5 * farad * supply.nominalV() * supply.nominalV();
    KnownCurrent known = KnownCurrent.of(sheet);
    Double stated = sheet.limits() == null ? null : sheet.limits().runningA();
    double running = stated != null ? stated : known.runningA() == null ? 0 : known.runningA();
    // A wire-wound resistor bears one second of its rating in a pulse; common practice, no source.
    return new Surge(ampere, ohm, rating(Math.max(joule, running * running * ohm)), joule);
  }

  /**
   * The larger of the capacitance stated for the whole set and the sum over its rails, farad; 0 =
   * unknown.
   */
  static double farad(JobSheet sheet) {
    double whole = sheet.supply().capacitanceUf() == null ? 0 : sheet.supply().capacitanceUf();
    double ofRails = 0;
    for (JobSheet.Rail rail : sheet.rails()) {
      ofRails += rail.capacitanceUf() == null ? 0 : rail.capacitanceUf();
    }
    return Math.max(whole, ofRails) * 1e-6;
  }

  /** The next value of the E12 row (IEC 60063) that is not smaller. */
  private static double rounded(double least) {
    double decade = Math.pow(10, Math.floor(Math.log10(Math.max(least, 0.1))));
    for (double value : ROW) {
      if (value * decade >= least - 1e-9) {
        return Math.round(value * decade * 1000) / 1000.0;
      }
    }
    return Math.round(10 * decade * 1000) / 1000.0;
  }

  private static double rating(double least) {
    for (double watt : WATTS) {
      if (watt >= least) {
        return watt;
      }
    }
    return Math.ceil(least / 100) * 100;
  }
}
