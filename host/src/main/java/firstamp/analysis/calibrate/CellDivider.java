package firstamp.analysis.calibrate;

import firstamp.model.text.Wording.Written;

/**
 * Two resistors in series across a cell, the head clips across the smaller one.
 *
 * @param largeOhm at the plus of the cell, by the person's meter
 * @param smallOhm at its minus
 */
public record CellDivider(double largeOhm, double smallOhm) {
  /**
   * From what was typed in.
   *
   * @throws CalibrationRefused no such resistors
   */
  public static CellDivider of(double largeOhm, double smallOhm) throws CalibrationRefused {
    if (!(smallOhm > 0 && largeOhm > smallOhm)) {
      throw new CalibrationRefused(
          "resistors", Written.of("%.5g", largeOhm), Written.of("%.5g", smallOhm));
    }
    return new CellDivider(largeOhm, smallOhm);
  }

  /** Part of the cell's volts that is on the head clips. */
  public double share() {
    return smallOhm / (largeOhm + smallOhm);
  }

  /** Accuracy of the volts on the head clips: cell and both resistors, each by the same meter. */
  public static MeterAccuracy accuracy(MeterAccuracy volts, MeterAccuracy ohms) {
    double percent = Math.hypot(volts.percentOfReading(), Math.sqrt(2) * ohms.percentOfReading());
    return new MeterAccuracy(Math.min(20, percent), 0);
  }
}
