package firstamp.analysis.figures;

import firstamp.model.JobSheet;
import firstamp.model.Summary;

/** Capacitance and energy from the supply's figures. */
public final class SupplyCalculation {
  /** Less charge than this on top of the steady current is scatter: 0.2 mC, 2 %. */
  private static final double LEAST_SURPLUS_C = 2e-4;

  private static final double LEAST_SURPLUS = 0.02;

  private SupplyCalculation() {}

  /**
   * Total capacitance from the charge of the surge: (charge of the first second - steady current
   * times 1 s) / volts. Microfarad; null where it is not valid: no second of steady current, a
   * current that still changes, or a look that has charged the capacitors before.
   */
  public static Double surgeUf(Evidence evidence) {
    Summary.SupplyFigures supply = evidence.supply();
    if (supply.chargeC() == null
        || supply.steadyA() == null
        || supply.steadyV() == null
        || supply.steadyV() < 0.5
        || evidence.look() != null && evidence.look().uF() != null
        || evidence.course() == null
        || evidence.course().seconds().size() < 3) {
      return null;
    }
    double second = evidence.course().seconds().get(1).amps();
    double change = Math.abs(second - supply.steadyA());
    if (change > Math.max(0.002, 0.05 * supply.steadyA())) {
      return null;
    }
    double surplusC = supply.chargeC() - supply.steadyA();
    boolean seen = surplusC > Math.max(LEAST_SURPLUS_C, LEAST_SURPLUS * supply.chargeC());
    return seen ? (Double) (surplusC / supply.steadyV() * 1e6) : null;
  }

  /** Volts over amperes at the end; null where either is missing or nothing flows. */
  public static Double loadOhm(Summary.SupplyFigures supply) {
    return supply == null
            || supply.steadyA() == null
            || supply.steadyV() == null
            || !(supply.steadyA() > 0)
        ? null
        : (Double) (supply.steadyV() / supply.steadyA());
  }

  /**
   * The set's capacitors by the sheet, microfarad: what it says of the whole set or the sum of its
   * rails, whichever is more; null if it names none.
   */
  public static Double sheetUf(JobSheet sheet) {
    Double whole = sheet.supply() == null ? null : sheet.supply().capacitanceUf();
    double sum = 0;
    for (JobSheet.Rail rail : sheet.rails()) {
      sum += rail.capacitanceUf() == null ? 0 : rail.capacitanceUf();
    }
    double uF = whole == null ? sum : Math.max(whole, sum);
    return uF > 0 ? (Double) uF : null;
  }

  /**
   * Leakage current of germanium parts at another temperature: it doubles every 10 degrees (a part
   * read at 20 and 40 C gave 4.3 times; public bench log, page not cited by name).
   */
  public static double germaniumLeakageA(double amps, double fromCelsius, double toCelsius) {
    return amps * StrictMath.pow(2, (toCelsius - fromCelsius) / 10);
  }
}
