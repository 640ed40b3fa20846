package firstamp.model;

import java.util.List;

/**
 * One power-up in figures: the last line of a run, stored unchanged.
 *
 * <p>A null component could not be measured and is left out where it is printed. Milliseconds count
 * from the closing of the switch. {@code xPlusMinus} is the expanded uncertainty (k = 2) of x.
 *
 * @param powerUp number in the bench log
 * @param uuid unique name
 * @param outcome tripped, no-draw, alarm, interrupted, normal: the first that applies
 * @param ended time, trip, user-off, rule-off, look, link-lost, probe-reset, signal, input-end
 * @param tripCause of a trip
 * @param tripAtMs switch pin low
 * @param onMs how long the switch was closed
 * @param look first look
 * @param supply figures of the supply
 * @param rails figures of the rails
 * @param levels figures of head and meter
 * @param watched rules that were watched
 * @param notWatched what was not, and why
 * @param alarms one entry per raising
 * @param conversions counted between stream start and stop
 * @param log where it is kept
 * @param replay true for a replay, null otherwise
 */
public record Summary(
    Integer powerUp,
    String uuid,
    String outcome,
    String ended,
    String tripCause,
    Double tripAtMs,
    Double onMs,
    LookFigures look,
    SupplyFigures supply,
    List<RailFigures> rails,
    LevelFigures levels,
    List<String> watched,
    List<NotWatched> notWatched,
    List<Alarm> alarms,
    ConversionCount conversions,
    LogPlace log,
    Boolean replay) {

  /**
   * First look.
   *
   * @param result identifier of the finding
   * @param ohm of the set through the look resistor
   * @param uF total capacitance from the rise
   * @param supplyV volts of the supply
   * @param ohmAtMost TRUE where the volts are less than the input can tell, so that the ohms are a
   *     bound; null otherwise
   */
  public record LookFigures(
      String result, Double ohm, Double uF, Double supplyV, Boolean ohmAtMost) {
    /** Ohms that are a figure and no bound. */
    public LookFigures(String result, Double ohm, Double uF, Double supplyV) {
      this(result, ohm, uF, supplyV, null);
    }

    /** Whether the ohms are a bound only. */
    public boolean atMost() {
      return Boolean.TRUE.equals(ohmAtMost);
    }
  }

  /**
   * Supply.
   *
   * @param inrushPeakA highest conversion of I in the first 100 ms
   * @param inrushI2tA2s integral of I squared over the first 100 ms
   * @param chargeC integral of I over the first 1 s
   * @param steadyA mean of the last 1 s on
   * @param steadyAPlusMinus its expanded uncertainty
   * @param steadyV mean of the last 1 s on
   * @param steadyVPlusMinus its expanded uncertainty
   */
  public record SupplyFigures(
      Double inrushPeakA,
      Double inrushI2tA2s,
      Double chargeC,
      Double steadyA,
      Double steadyAPlusMinus,
      Double steadyV,
      Double steadyVPlusMinus) {}

  /**
   * One rail.
   *
   * @param rail input 1 to 3
   * @param name from the sheet
   * @param finalV mean of the last 1 s on
   * @param finalVPlusMinus its expanded uncertainty
   * @param settledMs end of the last reading outside 2 % of finalV
   * @param settled1Ms outside 1 %
   * @param settled5Ms outside 5 %
   * @param settled10Ms outside 10 %
   * @param tauMs time constant of the first-order fit
   * @param rippleVrms tone at rippleHz and its multiples, noise removed
   * @param rippleHz of the strongest ripple tone
   */
  public record RailFigures(
      int rail,
      String name,
      Double finalV,
      Double finalVPlusMinus,
      Double settledMs,
      Double settled1Ms,
      Double settled5Ms,
      Double settled10Ms,
      Double tauMs,
      Double rippleVrms,
      Double rippleHz) {}

  /**
   * Head and meter.
   *
   * @param toneHz of the tone, if one holds at least half of the meter's power
   * @param headDbv head
   * @param headUa head current where the resistor is known, microampere rms
   * @param meterDbv meter
   * @param headBelowMeterDb meter minus head
   * @param expectedDb from the sheet
   * @param humDbv hum in the head
   */
  public record LevelFigures(
      Double toneHz,
      Double headDbv,
      Double headUa,
      Double meterDbv,
      Double headBelowMeterDb,
      Double expectedDb,
      Double humDbv) {}

  /**
   * Conversions between the host's stream start and stop.
   *
   * @param received good ones
   * @param lost missing ones
   * @param gaps how many holes
   */
  public record ConversionCount(long received, long lost, int gaps) {}

  /**
   * Where the power-up is kept.
   *
   * @param file of the bench log
   * @param bytes of this power-up
   */
  public record LogPlace(String file, Long bytes) {}
}
