package firstamp.sheet;

import firstamp.model.JobSheet;
import firstamp.model.limits.ProbeLimits;
import firstamp.model.text.Numbers;

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
    return "lamp".equals(sheet.supply().through()) ? 0 : 0.5 * farad(sheet) * volts * volts;
  }

  private static boolean beyond(JobSheet sheet) {
    return joule(sheet) > ProbeLimits.LARGEST_SURGE_J;
  }

  /** What to know before the first look; null where the switch bears the surge. */
  static String warning(JobSheet sheet) {
    return beyond(sheet)
        ? told(sheet)
            + " If the first look cannot charge them far enough, the switch stays open: charge the"
            + " set through a lamp first, and write \"through\":\"lamp\" for that."
        : null;
  }

  /**
   * Why the switch must not close without a first look; null where it may, or where the capacitors
   * are not known.
   */
  public static String refusal(JobSheet sheet) {
    return Boolean.FALSE.equals(sheet.supply().look()) && beyond(sheet)
        ? told(sheet)
            + " Not switched on: without the first look they are not charged beforehand. Take"
            + " \"look\":false off the sheet, or charge the set through a lamp first and write"
            + " \"through\":\"lamp\" for that."
        : null;
  }

  private static String told(JobSheet sheet) {
    return "Empty, the capacitors of this set ("
        + Numbers.text(farad(sheet) * 1e6)
        + " uF) take "
        + Numbers.text(joule(sheet))
        + " J at "
        + Numbers.text(sheet.supply().nominalV())
        + " V when the switch closes; the limiter of the probe box bears "
        + Numbers.text(ProbeLimits.LARGEST_SURGE_J)
        + " J.";
  }
}
