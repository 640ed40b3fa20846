package firstamp.emulate.bench;

import firstamp.emulate.box.Box;
import firstamp.protocol.values.Inputs;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * The box, the set during the look, digital inputs and their changes.
 *
 * @param box what its inputs do and what it keeps; null = whichever box the run asks for
 * @param lookSupplyV supply in the look
 * @param lookOhm resistance behind the look resistor
 * @param lookFarad capacitance beside it
 * @param decayS of the volts when the switch is open
 * @param inputBits digital inputs at the start
 * @param hardShortA level of the comparator at the start
 * @param changes in order of time
 */
public record FrontEnd(
    Box box,
    double lookSupplyV,
    double lookOhm,
    double lookFarad,
    double decayS,
    int inputBits,
    double hardShortA,
    List<Change> changes) {
  public static final double HARD_SHORT_A = 10;

  /** Copies and sorts. */
  public FrontEnd {
    List<Change> sorted = new ArrayList<>(changes);
    sorted.sort(Comparator.comparingDouble(Change::atS));
    changes = List.copyOf(sorted);
  }

  /**
   * One change of an input.
   *
   * @param atS seconds since the probe's first start
   * @param bit of {@link Inputs}; 0 = the comparator's level
   * @param on new level of the input
   * @param hardShortA new level of the comparator
   */
  public record Change(double atS, int bit, boolean on, double hardShortA) {}

  /** Without a file. */
  public static FrontEnd defaults(double supplyV) {
    return new FrontEnd(
        null,
        supplyV,
        1000,
        1000e-6,
        0.2,
        Inputs.CHASSIS_CLIP_ON | Inputs.SUPPLY_PRESENT | Inputs.ISOLATED_LINK,
        HARD_SHORT_A,
        List.of());
  }
}
