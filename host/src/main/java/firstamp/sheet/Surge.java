package firstamp.sheet;

import firstamp.model.JobSheet;
import firstamp.model.limits.ProbeLimits;
import firstamp.model.limits.Through;
import firstamp.model.text.Worded;

/**
 * The energy that the switch of the probe takes while its limiter fills the empty capacitors of a
 * set: half C times the volts squared, whatever holds the current.
 */
public final class Surge {
  private Surge() {}

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

  /** Joule with empty capacitors; 0 = they are not known, or a lamp holds the surge. */
  static double joule(JobSheet sheet) {
    double volts = sheet.supply().nominalV();
    return Through.of(sheet) == Through.LAMP ? 0 : 0.5 * farad(sheet) * volts * volts;
  }

  private static boolean beyond(JobSheet sheet) {
    return joule(sheet) > ProbeLimits.LARGEST_SURGE_J;
  }

  /** What to know before the first look; null where the switch bears the surge. */
  static Worded warning(JobSheet sheet) {
    return beyond(sheet) ? told("surge.warning", sheet) : null;
  }

  /**
   * Why the switch must not close without a first look; null where it may, or where the capacitors
   * are not known.
   */
  public static Worded refusal(JobSheet sheet) {
    return Boolean.FALSE.equals(sheet.supply().look()) && beyond(sheet)
        ? told("surge.refusal", sheet)
        : null;
  }

  private static Worded told(String key, JobSheet sheet) {
    return SheetException.words(
        key,
        farad(sheet) * 1e6,
        joule(sheet),
        sheet.supply().nominalV(),
        ProbeLimits.LARGEST_SURGE_J);
  }
}
