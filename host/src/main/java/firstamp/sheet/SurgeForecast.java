package firstamp.sheet;

import firstamp.model.JobSheet;
import firstamp.model.SourceOhm;
import firstamp.model.limits.ProbeLimits;

/**
 * The surge into the set's capacitors as predicted from the sheet, never too small. More than the
 * limiter of the probe holds never flows for long.
 *
 * <p>Through a resistance alone the current is {@code V/R exp(-t/RC)}: its charge is {@code CV},
 * its heat {@code (V/R)^2 RC/2 = Ip CV / 2}. A supply that limits gives at most {@code Ip} out of
 * its own output capacitor and then a plateau: {@code I CV} for the plateau and {@code Ip Cs V / 2}
 * for the capacitor. Three conversions in a row span 0.5 ms, so a charge of CV cannot keep them
 * above {@code CV / 0.5 ms}.
 *
 * <p>Over all resistances that may be in the set the charging current falls under {@code I} last
 * where {@code R = V / (e I)}: after {@code CV / (e I)}.
 *
 * @param peakA highest current that three conversions in a row can show
 * @param heatA2s integral of the current squared
 * @param chargingMs three times what charging at the plateau takes, or until the charging current
 *     is under the running limit whatever resistance is in the set
 */
record SurgeForecast(double peakA, double heatA2s, double chargingMs) {
  /** Where nothing is known of the capacitors: the large end of what is usual, no source. */
  private static final double USUAL_FARAD = 4700e-6;

  private static final double COMPUTERS_FARAD = 10_000e-6;

  /** Across the output of bench supplies: 100 to 1000 uF, common practice, no source. */
  private static final double SUPPLY_FARAD = 1000e-6;

  /** Half of the least that melts a quick-acting fuse, over its rating squared; from memory. */
  private static final double FUSE_BEARS = 0.25;

  private static final double THREE_CONVERSIONS_S = 0.5e-3;

  /**
   * For a sheet, filled or not.
   *
   * @param runningA the running limit that takes over from the surge limit
   */
  static SurgeForecast of(JobSheet sheet, double runningA) {
    JobSheet.Supply supply = sheet.supply();
    double volts = supply.nominalV();
    double known = Surge.farad(sheet);
    double largest = 2 * ProbeLimits.LARGEST_SURGE_J / volts;
    double charge = known > 0 ? known * volts : usualFarad(sheet) * volts;
    double highest = Math.min(ProbeLimits.LIMITER_A, volts / SourceOhm.of(supply));
    double plateau = supply.limitA() == null ? highest : Math.min(highest, supply.limitA());
    double heat;
    if (known == 0 && supply.fuseA() != null) {
      // The fuse is in the set because it bears the surge.
      heat = Math.min(highest * largest / 2, FUSE_BEARS * supply.fuseA() * supply.fuseA());
    } else {
      double ofSupply = Math.min(charge, SUPPLY_FARAD * volts);
      heat = Math.min(highest * charge / 2, plateau * charge + highest * ofSupply / 2);
    }
    double peak = known == 0 ? highest : Math.min(highest, charge / THREE_CONVERSIONS_S);
    // What the set draws leaves a third of the running limit for the charging current.
    double slowestS = charge / (Math.E * runningA / 3);
    double chargingMs = 1000 * Math.max(3 * charge / plateau, slowestS);
    return new SurgeForecast(peak, heat, chargingMs);
  }

  /** What is assumed where nothing is known of the capacitors, farad. */
  static double usualFarad(JobSheet sheet) {
    double volts = sheet.supply().nominalV();
    double usual = "computer".equals(sheet.set().kind()) ? COMPUTERS_FARAD : USUAL_FARAD;
    return Math.min(usual, 2 * ProbeLimits.LARGEST_SURGE_J / (volts * volts));
  }
}
