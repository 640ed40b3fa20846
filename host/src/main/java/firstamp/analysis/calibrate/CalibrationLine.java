package firstamp.analysis.calibrate;

import firstamp.model.samples.Channel;
import firstamp.model.samples.ChannelScale;
import firstamp.model.text.Wording.Phrase;
import firstamp.model.text.Wording.Written;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * The straight line through the points of a channel, by least squares: value = zero + step x
 * counts.
 *
 * @param channel it belongs to
 * @param scale the same as the probe keeps it
 * @param points in order of value
 * @param residuals value of each point less that of the line, ampere or volt
 * @param budget of its uncertainty
 */
public record CalibrationLine(
    Channel channel,
    ChannelScale scale,
    List<CalibrationPoint> points,
    List<Double> residuals,
    UncertaintyBudget budget) {
  private static final double FULL_COUNTS = 1024;

  /** Standard uncertainty of a value anywhere within half a count (JCGM 100:2008, F.2.2.1). */
  private static final double HALF_COUNT = 1 / Math.sqrt(12);

  /** A gain no better known than that of an uncalibrated probe is not a calibration. */
  private static final double WORST_GAIN_SHARE =
      firstamp.model.samples.Calibration.BLANK_GAIN_UNCERTAINTY;

  /** Copies the lists. */
  public CalibrationLine {
    points = List.copyOf(points);
    residuals = List.copyOf(residuals);
  }

  /**
   * Fits.
   *
   * @param channel to be calibrated
   * @param before the scale it has
   * @param gainBefore standard uncertainty of that scale's gain: kept where only the zero was taken
   * @param given at least one point; one alone moves the zero and keeps the gain
   * @param meter what the values were read from
   * @throws CalibrationRefused what the points say cannot be
   */
  public static CalibrationLine fit(
      Channel channel,
      ChannelScale before,
      double gainBefore,
      List<CalibrationPoint> given,
      MeterAccuracy meter)
      throws CalibrationRefused {
    List<CalibrationPoint> points = new ArrayList<>(given);
    points.sort(Comparator.comparingDouble(CalibrationPoint::value));
    check(channel, before, points);
    int n = points.size();
    double[] counts = points.stream().mapToDouble(p -> p.second().meanCounts()).toArray();
    double[] values = points.stream().mapToDouble(CalibrationPoint::value).toArray();
    double meanCounts = java.util.Arrays.stream(counts).average().orElseThrow();
    double meanValue = java.util.Arrays.stream(values).average().orElseThrow();
    double spread = 0;
    double joint = 0;
    for (int i = 0; i < n; i++) {
      spread += (counts[i] - meanCounts) * (counts[i] - meanCounts);
      joint += (counts[i] - meanCounts) * (values[i] - meanValue);
    }
    double step = n == 1 ? before.perCount() : joint / spread;
    double zero = meanValue - step * meanCounts;
    List<Double> residuals = new ArrayList<>();
    double squares = 0;
    for (int i = 0; i < n; i++) {
      double residual = values[i] - (zero + step * counts[i]);
      residuals.add(residual);
      squares += residual * residual;
    }
    Weights weights = new Weights(counts, meanCounts, spread, -zero / step);
    UncertaintyBudget budget =
        budget(points, weights, step, n > 2 ? Math.sqrt(squares / (n - 2)) : 0, gainBefore, meter);
    if (n > 1 && budget.gainShare() > WORST_GAIN_SHARE) {
      throw new CalibrationRefused(
          "gain",
          channel,
          Written.of("%.1f", 200 * budget.gainShare()),
          Written.of("%.1f", 200 * WORST_GAIN_SHARE));
    }
    return new CalibrationLine(
        channel, scale(channel, before, zero, step), points, residuals, budget);
  }

  private static ChannelScale scale(Channel channel, ChannelScale before, double zero, double step)
      throws CalibrationRefused {
    double base = before.basePerUnit();
    double low = zero * base;
    double high = (zero + step * FULL_COUNTS) * base;
    if (Math.abs(low) > Integer.MAX_VALUE || Math.abs(high) > Integer.MAX_VALUE) {
      throw new CalibrationRefused(
          "range",
          channel,
          Written.of("%.4g", low / base),
          Written.of("%.4g", high / base),
          channel.quantity().unit());
    }
    return new ChannelScale((int) Math.round(low), (int) Math.round(high), base);
  }

  private static void check(Channel channel, ChannelScale before, List<CalibrationPoint> points)
      throws CalibrationRefused {
    if (points.isEmpty()) {
      throw new CalibrationRefused("no-point", channel);
    }
    for (CalibrationPoint point : points) {
      if (!point.second().still()) {
        throw new CalibrationRefused(
            "moves",
            channel,
            shown(channel, point),
            Written.of("%.1f", point.second().spanCounts()));
      }
      if (point.atHighEnd() || point.atLowEnd() && point.value() != 0) {
        throw new CalibrationRefused(
            "at-the-end",
            channel,
            shown(channel, point),
            String.valueOf(point.second().lowestCounts()),
            String.valueOf(point.second().highestCounts()));
      }
    }
    for (int k = 1; k < points.size(); k++) {
      CalibrationPoint low = points.get(k - 1);
      CalibrationPoint high = points.get(k);
      double moved = high.second().meanCounts() - low.second().meanCounts();
      double up = Math.signum(before.perCount());
      // The same value taken twice may scatter by a count either way.
      if (high.value() == low.value() ? Math.abs(moved) > 1 : moved * up <= 0) {
        throw new CalibrationRefused(
            "not-monotonic",
            channel,
            shown(channel, low),
            Written.of("%.2f", low.second().meanCounts()),
            shown(channel, high),
            Written.of("%.2f", high.second().meanCounts()));
      }
    }
    if (points.size() > 1 && points.get(0).value() == points.get(points.size() - 1).value()) {
      throw new CalibrationRefused("one-value", channel, shown(channel, points.get(0)));
    }
  }

  private static UncertaintyBudget budget(
      List<CalibrationPoint> points,
      Weights weights,
      double step,
      double scatterOfLine,
      double gainBefore,
      MeterAccuracy meter) {
    int n = points.size();
    double[] noise = new double[n];
    double[] quantisation = new double[n];
    double[] below = new double[n];
    double[] digits = new double[n];
    double[] line = new double[n];
    for (int i = 0; i < n; i++) {
      CalibrationPoint point = points.get(i);
      noise[i] = point.second().meanDeviationCounts();
      quantisation[i] = quantisationCounts(point.second().deviationCounts());
      // What was below the converter's range read 0: the mean is too high by less than one count.
      below[i] = point.atLowEnd() ? HALF_COUNT : 0;
      digits[i] = point.value() == 0 ? 0 : meter.standardSmallest() / Math.abs(step);
      line[i] = scatterOfLine / Math.abs(step);
    }
    List<UncertaintyBudget.Line> lines = new ArrayList<>();
    lines.add(weights.independent("noise", 'A', noise));
    lines.add(weights.independent("quantisation", 'B', quantisation));
    lines.add(weights.independent("below-range", 'B', below));
    if (n == 1) {
      lines.add(new UncertaintyBudget.Line("before", 'B', gainBefore, 0));
    } else {
      // One meter for all points: it is wrong everywhere by the same share, and that is the gain.
      lines.add(new UncertaintyBudget.Line("meter", 'B', meter.standardShare(), 0));
      lines.add(weights.independent("meter-digits", 'B', digits));
      lines.add(weights.independent("line", 'A', line));
    }
    return UncertaintyBudget.of(lines);
  }

  /**
   * Standard uncertainty of a mean that is left from rounding to whole counts: half a count either
   * way where the input is quiet; noise of s counts moves the mean over the steps, and of the error
   * its first harmonic is left, smaller by exp(-2 pi^2 s^2) (Widrow and Kollar, Quantization Noise,
   * 2008, from memory; checked against counted sums in the tests).
   */
  static double quantisationCounts(double deviationCounts) {
    // Rounding itself scatters by 1/12: what is above it is noise.
    double noise2 = Math.max(0, deviationCounts * deviationCounts - 1.0 / 12);
    return HALF_COUNT * Math.exp(-2 * Math.PI * Math.PI * noise2);
  }

  private static Phrase shown(Channel channel, CalibrationPoint point) {
    return new Phrase("unit", Written.of("%.5g", point.value()), channel.quantity().unit());
  }

  /** How an error of each point, in counts, moves gain and zero of the line. */
  private record Weights(double[] counts, double meanCounts, double spread, double zeroAt) {
    UncertaintyBudget.Line independent(String cause, char type, double[] errorCounts) {
      double gain = 0;
      double zero = 0;
      for (int i = 0; i < counts.length; i++) {
        double slope = spread > 0 ? (counts[i] - meanCounts) / spread : 0;
        double atZero = 1.0 / counts.length + (zeroAt - meanCounts) * slope;
        gain += Math.pow(slope * errorCounts[i], 2);
        zero += Math.pow(atZero * errorCounts[i], 2);
      }
      return new UncertaintyBudget.Line(cause, type, Math.sqrt(gain), Math.sqrt(zero));
    }
  }
}
