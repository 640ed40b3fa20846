package firstamp.analysis.statistics;

import firstamp.analysis.statistics.Uncertainty.Summed;
import firstamp.model.samples.Calibration;
import firstamp.model.samples.Channel;
import java.util.List;

/**
 * Charge and energy that went through the switch over some readings, and how sure they are.
 *
 * <p>A gain is wrong by its share of the whole, a zero by its amperes times the time, both of them
 * for the range that the current was taken from: the coarse one of a surge of 20 ms has 20 ms of
 * its coarse zero. The scatter of single readings is averaged out.
 *
 * @param chargeC from the fine and from the coarse range
 * @param energyJ the same
 * @param fine charge of the fine range
 * @param coarse charge of the coarse range
 * @param fineEnergy energy of the fine range
 * @param coarseEnergy energy of the coarse range
 * @param uneven most by which volts and current that move within readings can have changed the
 *     energy, joule
 */
public record SupplyIntegral(
    double chargeC,
    double energyJ,
    Summed fine,
    Summed coarse,
    Summed fineEnergy,
    Summed coarseEnergy,
    double uneven) {

  /** Expanded uncertainty (k = 2) of the charge. */
  public double chargePlusMinus(Calibration calibration) {
    return Uncertainty.COVERAGE * new Uncertainty(calibration).ofSum(List.of(fine, coarse));
  }

  /** Expanded uncertainty (k = 2) of the energy: of the current, and of the volts it flowed at. */
  public double energyPlusMinus(Calibration calibration) {
    Uncertainty uncertainty = new Uncertainty(calibration);
    double amps = uncertainty.ofSum(List.of(fineEnergy, coarseEnergy));
    double volts = uncertainty.ofSum(List.of(new Summed(Channel.V, energyJ, 0, chargeC)));
    // Its sign is not known, its limit is: rectangular.
    return Uncertainty.COVERAGE * Math.sqrt(amps * amps + volts * volts + uneven * uneven / 3);
  }
}
