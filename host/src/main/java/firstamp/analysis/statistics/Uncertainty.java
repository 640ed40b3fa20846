package firstamp.analysis.statistics;

import firstamp.model.samples.Calibration;
import firstamp.model.samples.Channel;
import java.util.Arrays;
import java.util.List;

/**
 * Expanded uncertainties (k = 2) of figures taken from one channel, by the law of propagation (JCGM
 * 100:2008, 5.1.2 and 6.2.1): gain, zero, scatter and what a calibration leaves ({@link
 * InputBudget}) are taken as independent.
 */
public final class Uncertainty {
  /** Coverage factor. */
  public static final double COVERAGE = 2;

  private final Calibration calibration;

  /** Uncertainties of a probe with this calibration; blank = 5 % of every figure. */
  public Uncertainty(Calibration calibration) {
    this.calibration = calibration;
  }

  /**
   * Of a mean.
   *
   * @param channel it comes from
   * @param value ampere or volt
   * @param scatter standard uncertainty of the mean from its scatter, same unit
   */
  public double expanded(Channel channel, double value, double scatter) {
    double perCount = Math.abs(calibration.scale(channel).perCount());
    double gain = gain(channel) * value;
    double zero = zeroCounts(channel) * perCount;
    double input = InputBudget.standard(channel, value, perCount);
    return COVERAGE * Math.sqrt(gain * gain + zero * zero + scatter * scatter + input * input);
  }

  /**
   * Values of one channel added up over time.
   *
   * @param channel they come from
   * @param values the sum: value times weight
   * @param cubes sum of the cubes, for what grows with the square of the value
   * @param weight the sum of the weights: by it a wrong zero counts
   */
  public record Summed(Channel channel, double values, double cubes, double weight) {}

  /**
   * Standard uncertainty of a sum over ranges of one input. What one cause does to one range it
   * does to the other: one shunt, one meter, one temperature.
   */
  public double ofSum(List<Summed> ranges) {
    double[] causes = new double[2 + InputBudget.lines(Channel.I, 0).size()];
    for (Summed range : ranges) {
      double perCount = Math.abs(calibration.scale(range.channel()).perCount());
      double values = Math.abs(range.values());
      double heated = values > 0 ? Math.sqrt(range.cubes() / values) : 0;
      causes[0] += gain(range.channel()) * values;
      causes[1] += zeroCounts(range.channel()) * perCount * range.weight();
      int at = 2;
      for (InputBudget.Line line : InputBudget.lines(range.channel(), heated)) {
        causes[at] +=
            Math.hypot(line.gainShare() * values, line.counts() * perCount * range.weight());
        at++;
      }
    }
    return Math.sqrt(Arrays.stream(causes).map(cause -> cause * cause).sum());
  }

  private double zeroCounts(Channel channel) {
    boolean valid = calibration.kind() == Calibration.Kind.VALID;
    return Math.max(
        calibration.offsetUncertaintyCounts().get(channel),
        valid ? 0 : InputBudget.blankZeroCounts(channel));
  }

  /**
   * Expanded uncertainty of a level, dB: of the gain alone, an offset is no alternating voltage.
   */
  public double levelDb(Channel channel) {
    double share = COVERAGE * Math.hypot(gain(channel), InputBudget.gainShare(channel, 0));
    return 20 * Math.log10(1 + share);
  }

  /** Standard uncertainty of a channel's gain, share of the value. */
  public double gain(Channel channel) {
    double stated = calibration.gainUncertainty().get(channel);
    return calibration.kind() == Calibration.Kind.VALID
        ? stated
        : Math.max(stated, Calibration.BLANK_GAIN_UNCERTAINTY);
  }
}
