package firstamp.analysis;

import firstamp.model.Calibration;
import firstamp.model.Summary;
import java.util.List;

/**
 * All that is compared and judged of one power-up; what could not be measured is null.
 *
 * @param look first look, null if none was made
 * @param supply figures of the supply
 * @param rails one entry per rail of the sheet
 * @param levels head and meter, null if there are none
 * @param onMs how long the switch was closed, null if it never was
 * @param course how it went, null if it never was on
 * @param ripples per rail of the sheet, null where nothing stands out of the noise
 * @param extras further figures
 * @param calibration it ran on
 */
public record Evidence(
    Summary.LookFigures look,
    Summary.SupplyFigures supply,
    List<Summary.RailFigures> rails,
    Summary.LevelFigures levels,
    Double onMs,
    PowerUpCourse course,
    List<RailRipple> ripples,
    Extras extras,
    Calibration calibration) {

  /** Copies the lists. */
  public Evidence {
    rails = List.copyOf(rails);
    ripples = List.copyOf(ripples);
  }

  /** Figures of the rail on an input, null if the sheet has none there. */
  public Summary.RailFigures rail(int input) {
    return rails.stream().filter(rail -> rail.rail() == input).findFirst().orElse(null);
  }

  /** Ripple of the rail on an input, null if none. */
  public RailRipple ripple(int input) {
    return ripples.stream().filter(ripple -> ripple.rail() == input).findFirst().orElse(null);
  }

  /**
   * Ripple of a rail over all windows after it had settled.
   *
   * @param rail 1 to 3
   * @param mainsHz found in the data, 50 or 60
   * @param rms1V at mainsHz and its odd multiples
   * @param rms2V at twice mainsHz and its multiples
   * @param toneVrms of the strongest single tone
   * @param toneHz its frequency, mainsHz or twice that
   */
  public record RailRipple(
      int rail, int mainsHz, double rms1V, double rms2V, double toneVrms, double toneHz) {}

  /**
   * What does not stand in the summary line.
   *
   * @param peakClipped the inrush peak is only "at least"
   * @param speechDb head below meter over windows with signal that is no tone, weighted by the
   *     meter's power; null = none
   * @param speechDbPlusMinus expanded uncertainty of it from the scatter over windows
   * @param speechWindows how many windows that is from
   * @param headAtFloor the head level is only "at most"
   * @param headHumHz 50 or 60, the stronger in the head
   * @param humEvenShare share of its power at twice the mains and multiples, 0 to 1; null = no hum
   * @param humBeforeDbv hum in the head before the switch closed; null if it was under the noise
   */
  public record Extras(
      boolean peakClipped,
      Double speechDb,
      Double speechDbPlusMinus,
      int speechWindows,
      boolean headAtFloor,
      Integer headHumHz,
      Double humEvenShare,
      Double humBeforeDbv) {}
}
