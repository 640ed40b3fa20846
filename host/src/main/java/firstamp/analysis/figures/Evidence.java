package firstamp.analysis.figures;

import firstamp.analysis.spectrum.HumPattern;
import firstamp.analysis.statistics.SupplyIntegral;
import firstamp.model.LevelClips;
import firstamp.model.Summary;
import firstamp.model.Trip;
import firstamp.model.samples.Calibration;
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
 * @param railMore per rail of the sheet, what goes beyond the summary
 * @param heard what goes beyond the summary of head and meter
 * @param firstSecond what flowed in it; null if it is not known
 * @param peakClipped the inrush peak is only "at least"
 * @param trip by which the probe switched off, null if it did not
 * @param tripPeak highest current of it, null if none is known
 * @param stretches from mark to mark, in their order; empty without marks
 * @param calibration it ran on
 * @param clips of head and meter, as the probe has read them back
 */
public record Evidence(
    Summary.LookFigures look,
    Summary.SupplyFigures supply,
    List<Summary.RailFigures> rails,
    Summary.LevelFigures levels,
    Double onMs,
    PowerUpTrend course,
    List<RailRipple> ripples,
    List<RailMore> railMore,
    Heard heard,
    SupplyIntegral firstSecond,
    boolean peakClipped,
    Trip trip,
    TripPeak tripPeak,
    List<Stretch> stretches,
    Calibration calibration,
    Clips clips) {

  /** Copies the lists. */
  public Evidence {
    rails = List.copyOf(rails);
    ripples = List.copyOf(ripples);
    railMore = List.copyOf(railMore);
    stretches = List.copyOf(stretches);
  }

  /** Figures of the rail on an input, null if the sheet has none there. */
  public Summary.RailFigures rail(int input) {
    return rails.stream().filter(rail -> rail.rail() == input).findFirst().orElse(null);
  }

  /** Ripple of the rail on an input, null if none. */
  public RailRipple ripple(int input) {
    return ripples.stream().filter(ripple -> ripple.rail() == input).findFirst().orElse(null);
  }

  /** Further figures of the rail on an input, null if the sheet has none there. */
  public RailMore more(int input) {
    return railMore.stream().filter(more -> more.rail() == input).findFirst().orElse(null);
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
   * What goes beyond the summary of a rail.
   *
   * @param rail 1 to 3
   * @param tauMsPlusMinus expanded uncertainty (k = 2) of the time constant, from the fit's scatter
   * @param misfit scatter about one time constant as a share of the rise; null = no fit at all
   * @param overshootV highest it came, null if not beyond its end by a twentieth, two counts and
   *     what its readings scatter
   * @param droopV lowest second after it had settled, null if not under its end by a twentieth
   * @param droopMs when
   * @param filter by the tone of its ripple, null where it cannot be told
   */
  public record RailMore(
      int rail,
      Double tauMsPlusMinus,
      Double misfit,
      Double overshootV,
      Double droopV,
      Double droopMs,
      Filter filter) {}

  /**
   * A filter capacitor as its ripple shows it.
   *
   * @param uF microfarad
   * @param atMost the ripple is beyond the formula's range, which then reads high
   */
  public record Filter(double uF, boolean atMost) {}

  /**
   * What goes beyond the summary of head and meter.
   *
   * @param speechDb head below meter over windows with signal that is no tone, weighted by the
   *     meter's power; null = none
   * @param speechDbPlusMinus expanded uncertainty of it from the scatter over windows
   * @param speechWindows how many windows that is from
   * @param overExpectedDb head below what the sheet expects of that very signal; null = nothing
   *     expected, or no such signal
   * @param overExpectedDbPlusMinus expanded uncertainty of it
   * @param curve head below meter over frequency on such signal
   * @param headAtFloor the head level is only "at most"
   * @param headHumHz 50 or 60, the stronger in the head
   * @param humEvenShare share of its power at twice the mains and multiples, 0 to 1; null = no hum
   * @param humBeforeDbv hum in the head before the switch closed; null if it was under the noise
   * @param pattern kind of hum, null = no hum
   * @param inStep per rail how much of the hum goes in step with it
   * @param harmonicsPercent the head's harmonics against its tone
   * @param noiseDbv noise of the head beside a tone
   * @param needleVu highest place of a needle of volume units, dB against 4 dBu of a sine; null
   *     under -60, or where the meter input is the movement itself
   * @param needlePercent mean place of the movement where its own volts are measured, percent of
   *     full scale
   */
  public record Heard(
      Double speechDb,
      Double speechDbPlusMinus,
      int speechWindows,
      Double overExpectedDb,
      Double overExpectedDbPlusMinus,
      List<CurvePoint> curve,
      boolean headAtFloor,
      Integer headHumHz,
      Double humEvenShare,
      Double humBeforeDbv,
      HumPattern.Kind pattern,
      List<InStep> inStep,
      Double harmonicsPercent,
      Double noiseDbv,
      Double needleVu,
      Double needlePercent) {
    /** Copies the lists. */
    public Heard {
      curve = List.copyOf(curve);
      inStep = List.copyOf(inStep);
    }

    /** The head's clip is joined to nothing. */
    static Heard meterAlone(Double needleVu, Double needlePercent) {
      return new Heard(
          null,
          null,
          0,
          null,
          null,
          List.of(),
          false,
          null,
          null,
          null,
          null,
          List.of(),
          null,
          null,
          needleVu,
          needlePercent);
    }
  }

  /**
   * Clips of head and meter.
   *
   * @param before the switch closed
   * @param after it opened again; the same where they were not read again
   */
  public record Clips(LevelClips before, LevelClips after) {
    /** Joined all the time. */
    static final Clips JOINED = new Clips(LevelClips.JOINED, LevelClips.JOINED);
  }

  /**
   * Head below meter in one band.
   *
   * @param hz middle of the band
   * @param db decibel
   * @param meterShare how much of the meter's power the band holds, 0 to 1
   */
  public record CurvePoint(double hz, double db, double meterShare) {}

  /**
   * Hum in the head against the ripple of a rail.
   *
   * @param rail 1 to 3
   * @param share of the hum's power that goes in step with it, 0 to 1
   * @param windows of 200 ms that is from
   */
  public record InStep(int rail, double share, int windows) {}

  /**
   * What lies between two changes.
   *
   * @param number 0 = before the first change
   * @param mark words of what it begins with, null for number 0
   * @param change whether it begins with something that the person changed, not with a mode or step
   * @param fromMs since closing
   * @param toMs since closing
   * @param evidence steady figures of that time; look, surge and settling are absent
   */
  public record Stretch(
      int number, String mark, boolean change, double fromMs, double toMs, Evidence evidence) {}
}
