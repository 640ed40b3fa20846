package firstamp.analysis.statistics;

import firstamp.model.samples.Calibration;
import firstamp.model.samples.Channel;
import java.util.List;

/**
 * What a calibration does not take out of an input: standard uncertainties by cause (JCGM 100:2008,
 * 4.3.7: limits of error taken as rectangular). The table of docs/verification.md is this one.
 *
 * <p>Limits hold within 10 K of the temperature of the calibration and within a year of it.
 */
public final class InputBudget {
  private static final double SQRT3 = Math.sqrt(3);

  /** Kelvin from the calibration, years since it. */
  private static final double KELVIN = 10;

  private static final double YEARS = 1;

  /** Integral non-linearity of the converter at 500 kHz, counts. */
  private static final double BOW_COUNTS = 1;

  /** The shunt: 75 ppm/K, 20 K for a watt, 50 mohm: share of the gain for an ampere squared. */
  private static final double HEATING_PER_A2 = 75e-6 * 20 * 0.05;

  /**
   * While RUN is low the limiter's base is forced, and its current runs through the shunt: 0.77 V
   * of the base over R12, 2.2 kohm, is 0.35 mA (0.9 counts of J). It is in the zero, which is taken
   * with RUN low, and gone while the switch is on: a current then reads so much low.
   */
  private static final double FORCED_BASE_A = 0.77 / 2200;

  /** Zero of a rail that was never calibrated: dividers of 1 %, 2.6 counts of drawn values. */
  private static final double BLANK_RAIL_ZERO_COUNTS = 3.4;

  private InputBudget() {}

  /**
   * One cause.
   *
   * @param cause identifier
   * @param gainShare standard uncertainty of the gain, share of the value
   * @param counts standard uncertainty in counts, at any value
   * @param source where the limits come from
   */
  public record Line(String cause, double gainShare, double counts, String source) {}

  /**
   * The causes of one channel at a value.
   *
   * @param value ampere or volt: heats the shunt
   */
  public static List<Line> lines(Channel channel, double value) {
    double heating = channel == Channel.I ? HEATING_PER_A2 * value * value / SQRT3 : 0;
    return List.of(
        new Line(
            "linearity",
            0,
            BOW_COUNTS / SQRT3,
            "data sheet of the chip, twice its 0.5 count at 200 kHz (from memory)"),
        new Line(
            "temperature",
            perKelvin(channel) * KELVIN / SQRT3,
            zeroPerKelvin(channel) * KELVIN / SQRT3,
            "parts.csv; 25 and 100 ppm/K of resistors without a figure (from memory)"),
        new Line(
            "ageing",
            perYear(channel) * YEARS / SQRT3,
            zeroPerYear(channel) * YEARS / SQRT3,
            "0.02 and 0.1 % a year of 0.1 and 1 % film (from memory)"),
        new Line(
            "forced-base",
            0,
            channel == Channel.I || channel == Channel.J
                ? FORCED_BASE_A / Math.abs(stepA(channel)) / SQRT3
                : 0,
            "0.77 V at the limiter's base over R12 (drive.cir, simulated); low only"),
        new Line(
            "shunt-heating", heating, 0, "75 ppm/K (parts.csv), 20 K for a watt (from memory)"));
  }

  /** Zero of a channel that was never calibrated, counts; 0 where it is taken before arming. */
  static double blankZeroCounts(Channel channel) {
    return switch (channel) {
      case R1, R2, R3 -> BLANK_RAIL_ZERO_COUNTS;
      default -> 0;
    };
  }

  private static double stepA(Channel channel) {
    return Calibration.nominal().scale(channel).perCount();
  }

  /** Root of the sum of squares of the parts in the path. */
  private static double perKelvin(Channel channel) {
    return switch (channel) {
      case I, J -> 100e-6;
      case V -> 39e-6;
      case R1, R2, R3 -> 59e-6;
      case H -> 40e-6;
      case M -> 80e-6;
    };
  }

  private static double zeroPerKelvin(Channel channel) {
    return switch (channel) {
      case I, J, V -> 0;
      case R1, R2, R3 -> 0.017;
      case H -> 0.01;
      case M -> 0.05;
    };
  }

  private static double perYear(Channel channel) {
    return switch (channel) {
      case I, J -> 6.3e-4;
      case V -> 2.7e-4;
      case R1, R2, R3 -> 1.1e-3;
      case H -> 3e-4;
      case M -> 8e-4;
    };
  }

  private static double zeroPerYear(Channel channel) {
    return switch (channel) {
      case I, J, V -> 0;
      case R1, R2, R3 -> 0.33;
      case H -> 0.07;
      case M -> 0.48;
    };
  }

  /** Combined standard uncertainty of the gain alone, share of the value. */
  static double gainShare(Channel channel, double value) {
    return Math.sqrt(
        lines(channel, value).stream().mapToDouble(line -> Math.pow(line.gainShare(), 2)).sum());
  }

  /** Combined standard uncertainty at a value, in its unit. */
  static double standard(Channel channel, double value, double perCount) {
    double squares = 0;
    for (Line line : lines(channel, value)) {
      squares += Math.pow(line.gainShare() * value, 2) + Math.pow(line.counts() * perCount, 2);
    }
    return Math.sqrt(squares);
  }
}
