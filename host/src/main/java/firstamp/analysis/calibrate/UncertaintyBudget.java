package firstamp.analysis.calibrate;

import java.util.List;

/**
 * Where the uncertainty of a calibrated channel comes from: standard uncertainties, each already
 * times its sensitivity (JCGM 100:2008, 8 and its example H.3, a calibration curve).
 *
 * @param lines one per cause
 * @param gainShare combined standard uncertainty of the gain, share of the value
 * @param zeroCounts combined standard uncertainty of the zero, counts
 */
public record UncertaintyBudget(List<Line> lines, double gainShare, double zeroCounts) {
  /** Copies the list. */
  public UncertaintyBudget {
    lines = List.copyOf(lines);
  }

  /**
   * One cause.
   *
   * @param cause identifier: {@code noise}, {@code quantisation}, {@code below-range}, {@code
   *     meter}, {@code meter-digits}, {@code line}, {@code before}
   * @param type how it was found: A from scatter, B otherwise (JCGM 100:2008, 4.2 and 4.3)
   * @param gainShare its part in the gain
   * @param zeroCounts its part in the zero
   */
  public record Line(String cause, char type, double gainShare, double zeroCounts) {}

  /** Combines independent causes: root of the sum of squares (JCGM 100:2008, 5.1.2). */
  static UncertaintyBudget of(List<Line> lines) {
    double gain = 0;
    double zero = 0;
    for (Line line : lines) {
      gain += line.gainShare() * line.gainShare();
      zero += line.zeroCounts() * line.zeroCounts();
    }
    return new UncertaintyBudget(lines, Math.sqrt(gain), Math.sqrt(zero));
  }
}
