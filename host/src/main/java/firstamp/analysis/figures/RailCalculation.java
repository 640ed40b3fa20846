package firstamp.analysis.figures;

import firstamp.analysis.statistics.FirstOrderFit;
import firstamp.analysis.statistics.Moments;
import firstamp.analysis.statistics.Uncertainty;
import firstamp.model.JobSheet;
import firstamp.model.Summary;
import firstamp.model.samples.Calibration;
import firstamp.model.samples.Channel;
import firstamp.model.samples.ChannelScale;
import java.util.ArrayList;
import java.util.List;

/** Figures of the rails. */
public final class RailCalculation {
  /** Past this the rail swung over, under it it was pulled down (common practice, no source). */
  private static final double SWING_SHARE = 0.05;

  /** Under it a swing cannot be told from the steps of the converter. */
  private static final double SWING_COUNTS = 2;

  /** Of a thousand readings none is further from their mean by chance. */
  private static final double SWING_SIGMAS = 4;

  private final JobSheet sheet;
  private final Calibration calibration;
  private final Uncertainty uncertainty;

  RailCalculation(JobSheet sheet, Calibration calibration) {
    this.sheet = sheet;
    this.calibration = calibration;
    this.uncertainty = new Uncertainty(calibration);
  }

  /** A rail of which only the ripple can be told. */
  static Summary.RailFigures ripplesOnly(JobSheet.Rail rail, RippleSums.Ripple ripple) {
    return new Summary.RailFigures(
        rail.input(),
        rail.name(),
        null,
        null,
        null,
        null,
        null,
        null,
        null,
        ripple == null ? null : (Double) ripple.rmsV(),
        ripple == null ? null : (Double) ripple.strongestHz());
  }

  /**
   * A rail.
   *
   * @param last second on; null = was on for less
   * @param fit of its start; null = none describes it
   */
  Summary.RailFigures figures(
      JobSheet.Rail rail, IntervalTotals now, LastSecond last, FirstOrderFit fit) {
    int input = rail.input();
    Channel channel = Channel.ofRail(input);
    RippleSums.Ripple ripple = now.steady().ripple(input);
    if (last == null || last.clipped(channel)) {
      return ripplesOnly(rail, ripple);
    }
    Moments volts = last.moments(reading -> last.scaling().railV(reading, input));
    SettleTimes times = now.settle(input);
    ChannelScale scale = calibration.scale(channel);
    return new Summary.RailFigures(
        input,
        rail.name(),
        volts.mean(),
        uncertainty.expanded(channel, volts.mean(), volts.meanUncertainty()),
        settledMs(times, scale, volts.mean(), 0.02),
        settledMs(times, scale, volts.mean(), 0.01),
        settledMs(times, scale, volts.mean(), 0.05),
        settledMs(times, scale, volts.mean(), 0.10),
        RailStart.describes(fit) ? (Double) (fit.tau() * 1000) : null,
        ripple == null ? null : (Double) ripple.rmsV(),
        ripple == null ? null : (Double) ripple.strongestHz());
  }

  private static Double settledMs(
      SettleTimes times, ChannelScale scale, double finalV, double share) {
    double one = 10 * scale.counts(finalV - share * Math.abs(finalV));
    double other = 10 * scale.counts(finalV + share * Math.abs(finalV));
    Integer readings = times.settled(Math.min(one, other), Math.max(one, other));
    return readings == null ? null : (Double) (10.0 * readings);
  }

  /**
   * What goes beyond the summary: how sure the time constant is, swing, droop, the filter.
   *
   * @param fits per rail input, null where there is none
   */
  List<Evidence.RailMore> more(
      List<Summary.RailFigures> rails,
      PowerUpTrend course,
      List<Evidence.RailRipple> ripples,
      Double steadyA,
      FirstOrderFit[] fits) {
    List<Evidence.RailMore> more = new ArrayList<>();
    for (Summary.RailFigures figures : rails) {
      JobSheet.Rail rail = sheet.rail(figures.rail());
      Evidence.RailRipple ripple =
          ripples.stream().filter(one -> one.rail() == figures.rail()).findFirst().orElse(null);
      FirstOrderFit fit = fits[figures.rail()];
      PowerUpTrend.SecondMean droop = droop(rail, figures.finalV(), course);
      more.add(
          new Evidence.RailMore(
              figures.rail(),
              RailStart.describes(fit) ? (Double) (2000 * fit.tauError()) : null,
              fit == null ? null : (Double) fit.misfit(),
              overshootV(figures, course),
              droop == null ? null : droop.railV().get(figures.rail() - 1),
              droop == null ? null : (Double) (1000.0 * droop.second()),
              filter(rail, figures.finalV(), ripple, steadyA)));
    }
    return more;
  }

  private Double overshootV(Summary.RailFigures figures, PowerUpTrend course) {
    Double finalV = figures.finalV();
    if (finalV == null || course == null) {
      return null;
    }
    double highest = 0;
    for (PowerUpTrend.Point point : course.start()) {
      highest = Math.max(highest, signed(point.railV().get(figures.rail() - 1), finalV));
    }
    return highest - Math.abs(finalV) > leastSwingV(figures.rail(), finalV, course)
        ? (Double) Math.copySign(highest, finalV)
        : null;
  }

  /** Closer to the end than this is no swing: a share, two counts, what single readings scatter. */
  private double leastSwingV(int input, double finalV, PowerUpTrend course) {
    double step = Math.abs(calibration.scale(Channel.ofRail(input)).perCount());
    double least = Math.max(SWING_SHARE * Math.abs(finalV), SWING_COUNTS * step);
    return Math.max(least, SWING_SIGMAS * scatterV(input, course.start()));
  }

  /** Standard deviation of the later half of the readings, by neighbours: a drift is no scatter. */
  private static double scatterV(int input, List<PowerUpTrend.Point> points) {
    double squares = 0;
    int from = points.size() / 2 + 1;
    for (int k = from; k < points.size(); k++) {
      double step = points.get(k).railV().get(input - 1) - points.get(k - 1).railV().get(input - 1);
      squares += step * step;
    }
    return from < points.size() ? Math.sqrt(squares / 2 / (points.size() - from)) : 0;
  }

  private PowerUpTrend.SecondMean droop(JobSheet.Rail rail, Double finalV, PowerUpTrend course) {
    if (finalV == null || course == null) {
      return null;
    }
    double settleMs = rail.settleMs() == null ? 500 : rail.settleMs();
    PowerUpTrend.SecondMean lowest = null;
    for (PowerUpTrend.SecondMean mean : course.seconds()) {
      double volts = signed(mean.railV().get(rail.input() - 1), finalV);
      if (mean.second() * 1000.0 >= Math.max(1000, settleMs)
          && (lowest == null || volts < signed(lowest.railV().get(rail.input() - 1), finalV))) {
        lowest = mean;
      }
    }
    if (lowest == null) {
      return null;
    }
    double below = Math.abs(finalV) - signed(lowest.railV().get(rail.input() - 1), finalV);
    return below > leastSwingV(rail.input(), finalV, course) ? lowest : null;
  }

  private static double signed(double volts, double like) {
    return like < 0 ? -volts : volts;
  }

  /** Filter behind a rectifier by the tone of its ripple; null where it cannot be told. */
  private static Evidence.Filter filter(
      JobSheet.Rail rail, Double finalV, Evidence.RailRipple ripple, Double amps) {
    if (ripple == null || finalV == null || amps == null || !(amps > 0)) {
      return null;
    }
    Double expectedHz = expectedHz(rail, ripple.mainsHz());
    if (expectedHz == null || ripple.toneHz() != expectedHz) {
      return null;
    }
    double uF = 1e6 * FilterCapacitance.fromTone(amps, ripple.toneHz(), ripple.toneVrms());
    boolean valid = FilterCapacitance.valid(ripple.toneVrms(), finalV);
    return new Evidence.Filter(uF, !valid);
  }

  /** Where a rail's ripple should be; null if the sheet names no rectifier. */
  public static Double expectedHz(JobSheet.Rail rail, int mainsHz) {
    String rectifier = rail.rectifier() == null ? "none" : rail.rectifier();
    return switch (rectifier) {
      case "full" -> 2.0 * mainsHz;
      case "half" -> (double) mainsHz;
      default -> null;
    };
  }
}
