package firstamp.analysis.statistics;

import firstamp.model.samples.Calibration;
import firstamp.model.samples.Channel;

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
    boolean valid = calibration.kind() == Calibration.Kind.VALID;
    double gain = gain(channel) * value;
    double zeroCounts =
        Math.max(
            calibration.offsetUncertaintyCounts().get(channel),
            valid ? 0 : InputBudget.blankZeroCounts(channel));
    double zero = zeroCounts * perCount;
    double input = InputBudget.standard(channel, value, perCount);
    return COVERAGE * Math.sqrt(gain * gain + zero * zero + scatter * scatter + input * input);
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
