package firstamp.analysis.figures;

import firstamp.model.Look;
import firstamp.model.LookOhm;
import firstamp.model.Summary;
import firstamp.model.samples.Calibration;
import firstamp.model.samples.Channel;
import firstamp.model.samples.Scaling;

/**
 * What the look through the resistor says in ohms, microfarads and volts (wire-format.md section 3,
 * look result).
 *
 * <p>supply = v + j R; set = v / j; C = (sum of j - sum of v / set) 2 ms / v: what flowed and did
 * not go through the resistance is in the capacitors.
 */
public final class LookCalculation {
  private static final double PAIR_SECONDS = 0.002;

  private LookCalculation() {}

  /**
   * Figures of one look; what could not be measured is null.
   *
   * @param look the probe's integers
   * @param calibration of the probe
   * @param lookOhm look resistor
   */
  public static Summary.LookFigures of(Look look, Calibration calibration, double lookOhm) {
    String result = look.result().id();
    boolean looked =
        look.pairs() > 0
            && look.result() != Look.Result.SKIPPED
            && look.result() != Look.Result.CURRENT_WHILE_OFF
            && look.result() != Look.Result.VOLTS_STAY
            && look.result() != Look.Result.NO_ZERO
            && look.result() != Look.Result.SHUNT;
    if (!looked) {
      return new Summary.LookFigures(result, null, null, null);
    }
    Scaling scaling = new Scaling(calibration, look.zero());
    double countV = Math.abs(calibration.scale(Channel.V).perCount());
    double countA = Math.abs(calibration.scale(Channel.J).perCount());
    double volts = scaling.value(Channel.V, look.endV16() / 16.0);
    double amps = scaling.value(Channel.J, look.endJ16() / 16.0);
    boolean reversed = look.result() == Look.Result.REVERSED;
    Double supplyV = reversed ? null : (Double) (volts + Math.max(0, amps) * lookOhm);
    boolean flows = amps >= countA && !reversed;
    LookOhm found = flows ? LookOhm.of(volts, amps, countV) : null;
    Double ohm = found == null ? null : (Double) found.ohm();
    Double farad = reversed ? null : farad(look, scaling, volts, ohm, countV, countA);
    return new Summary.LookFigures(
        result,
        ohm,
        farad == null ? null : farad * 1e6,
        supplyV,
        found != null && found.atMost() ? Boolean.TRUE : null);
  }

  private static Double farad(
      Look look, Scaling scaling, double volts, Double ohm, double countV, double countA) {
    if (volts < 4 * countV) {
      return null;
    }
    double pairs = look.pairs();
    double ampSum = pairs * scaling.value(Channel.J, look.sumJ() / pairs);
    double voltSum = pairs * scaling.value(Channel.V, look.sumV() / pairs);
    double chargeC = (ampSum - (ohm == null ? 0 : voltSum / ohm)) * PAIR_SECONDS;
    double farad = chargeC / volts;
    // Zero known to 1/16 count over all pairs, one step of noise on each.
    double unsure = (pairs / 16 + Math.sqrt(pairs)) * countA * PAIR_SECONDS / volts;
    return farad > 2 * unsure ? farad : null;
  }
}
