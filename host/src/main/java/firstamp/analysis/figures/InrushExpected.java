package firstamp.analysis.figures;

import firstamp.model.JobSheet;
import firstamp.model.SourceOhm;
import firstamp.model.Summary;

/**
 * The inrush predicted from a first look, as "up to": whatever resistance is in the set itself only
 * makes it smaller.
 *
 * <p>The look has charged the capacitors to its own volts, {@code V Rs / (Rs + Rl)} with the set's
 * resistance Rs behind the look resistor Rl (voltage divider); {@code dV} is what is left. Through
 * a resistance R alone the current is {@code dV/R exp(-t/RC)}, under a twentieth after {@code 3
 * RC}; the set also draws {@code V/Rs}. A supply that limits at I delivers the charge {@code C dV}
 * in {@code C dV / I}; its own output capacitor gives a spike first, which R alone holds.
 * (First-order circuits, as in any textbook of electrical engineering; from memory.)
 *
 * @param peakA highest current, the spike of the supply's own capacitor included
 * @param limitA current at which the supply limits, where that is less; null = it does not
 * @param ms until it is over
 */
public record InrushExpected(double peakA, Double limitA, double ms) {
  /** End of the coarse current range: what is more cannot be told. */
  private static final double RANGE_A = 12.5;

  /**
   * What is expected after a look.
   *
   * @param lookOhm look resistor, null = not known: nothing counts as charged
   * @return null where the look could not tell the capacitors or the volts
   */
  public static InrushExpected of(JobSheet sheet, Summary.LookFigures look, Double lookOhm) {
    JobSheet.Supply supply = sheet.supply();
    if (supply == null || look == null || look.uF() == null || look.supplyV() == null) {
      return null;
    }
    double volts = look.supplyV();
    Double setOhm = look.ohm();
    boolean charged = setOhm != null && lookOhm != null;
    double left = charged ? volts * lookOhm / (lookOhm + setOhm) : volts;
    double drawnA = setOhm == null || setOhm <= 0 ? 0 : volts / setOhm;
    double ohm = SourceOhm.of(supply);
    double peakA = Math.min(RANGE_A, left / ohm + drawnA);
    double farad = look.uF() * 1e-6;
    Double limitA = supply.limitA() != null && supply.limitA() < peakA ? supply.limitA() : null;
    double plateauA = limitA == null ? peakA : limitA;
    // Current that the set draws does not charge; at least half of the limit does.
    double chargingA = Math.max(plateauA - drawnA, plateauA / 2);
    double seconds = Math.max(farad * left / chargingA, limitA == null ? 3 * ohm * farad : 0);
    return new InrushExpected(peakA, limitA, 1000 * seconds);
  }
}
