package firstamp.analysis;

import firstamp.model.Calibration;
import firstamp.model.Channel;
import firstamp.model.Summary;
import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;

/**
 * What changed from one power-up to another, figure by figure.
 *
 * <p>Supply current, supply volts and rails are held against each other by Welch's test on means of
 * one second of the second half of each; other figures exist once per power-up, so their scatter is
 * an assumption (listed at each, common practice, no source). The calibrations' uncertainty comes
 * on top unless both ran on one calibration of one probe.
 *
 * @param differences figures that both have, in the order of the summary
 * @param parting where the two courses first part, null if they do not
 */
public record Comparison(List<Difference> differences, Parting parting) {
  private static final double PEAK_SHARE = 0.03;
  private static final double HEAT_SHARE = 0.06;
  private static final double CHARGE_SHARE = 0.02;
  private static final double TIME_SHARE = 0.03;
  private static final double RIPPLE_SHARE = 0.03;
  private static final double LOOK_SHARE = 0.02;
  private static final double LEVEL_DB = 0.25;
  private static final double READING_MS = 10;
  private static final double DB_PER_SHARE = 20 / StrictMath.log(10);

  /** Copies the list. */
  public Comparison {
    differences = List.copyOf(differences);
  }

  /**
   * One figure.
   *
   * @param figure key of the summary line
   * @param rail 1 to 3, 0 = none
   * @param unit SI symbol
   * @param before value of the first power-up
   * @param after value of the second
   * @param difference second less first
   * @param plusMinus expanded uncertainty of the difference, 95 %
   * @param significant whether the difference is larger than that
   * @param p probability by chance, null where no test was made
   */
  public record Difference(
      String figure,
      int rail,
      String unit,
      double before,
      double after,
      double difference,
      double plusMinus,
      boolean significant,
      Double p) {}

  /**
   * Where the courses part.
   *
   * @param what "supply current", "supply volts" or "rail"
   * @param rail 1 to 3, 0 = none
   * @param atMs since closing
   * @param before value of the first power-up there
   * @param after value of the second
   */
  public record Parting(String what, int rail, double atMs, double before, double after) {}

  /**
   * Compares.
   *
   * @param before first power-up
   * @param after second
   * @param oneProbe whether the same probe took both; with equal scales its calibration then drops
   *     out of the differences
   */
  public static Comparison of(Evidence before, Evidence after, boolean oneProbe) {
    Builder builder = new Builder(before, after, oneProbe);
    builder.look();
    builder.supply();
    builder.rails();
    builder.levels();
    return new Comparison(builder.differences, CourseParting.of(before.course(), after.course()));
  }

  private static final class Builder {
    private final Evidence before;
    private final Evidence after;
    private final boolean oneCalibration;
    private final List<Difference> differences = new ArrayList<>();

    Builder(Evidence before, Evidence after, boolean oneProbe) {
      this.before = before;
      this.after = after;
      Calibration one = before.calibration();
      Calibration two = after.calibration();
      this.oneCalibration =
          oneProbe
              && one.scales().equals(two.scales())
              && one.calibratedEpochSeconds() == two.calibratedEpochSeconds();
    }

    void look() {
      Summary.LookFigures one = before.look();
      Summary.LookFigures two = after.look();
      if (one != null && two != null) {
        share("look.ohm", 0, "ohm", one.ohm(), two.ohm(), LOOK_SHARE, 0, Channel.V, Channel.J);
        share("look.uF", 0, "uF", one.uF(), two.uF(), LOOK_SHARE, 0, Channel.V, Channel.J);
        share("look.supplyV", 0, "V", one.supplyV(), two.supplyV(), 0, step(Channel.V), Channel.V);
      }
    }

    void supply() {
      Summary.SupplyFigures one = before.supply();
      Summary.SupplyFigures two = after.supply();
      share(
          "inrushPeakA",
          0,
          "A",
          one.inrushPeakA(),
          two.inrushPeakA(),
          PEAK_SHARE,
          step(Channel.I),
          Channel.I);
      share(
          "inrushI2tA2s",
          0,
          "A2s",
          one.inrushI2tA2s(),
          two.inrushI2tA2s(),
          HEAT_SHARE,
          0,
          Channel.I,
          Channel.I);
      share("chargeC", 0, "C", one.chargeC(), two.chargeC(), CHARGE_SHARE, 0, Channel.I);
      means(
          "steadyA",
          0,
          "A",
          one.steadyA(),
          two.steadyA(),
          two.steadyA() != null && two.steadyA() > 0.35 ? Channel.I : Channel.J,
          PowerUpCourse.SecondMean::amps);
      means(
          "steadyV",
          0,
          "V",
          one.steadyV(),
          two.steadyV(),
          Channel.V,
          PowerUpCourse.SecondMean::volts);
    }

    void rails() {
      for (Summary.RailFigures one : before.rails()) {
        Summary.RailFigures two = after.rail(one.rail());
        if (two == null) {
          continue;
        }
        int rail = one.rail();
        Channel channel = Channel.ofRail(rail);
        means(
            "finalV",
            rail,
            "V",
            one.finalV(),
            two.finalV(),
            channel,
            mean -> mean.railV().get(rail - 1));
        share("settledMs", rail, "ms", one.settledMs(), two.settledMs(), TIME_SHARE, READING_MS);
        share("tauMs", rail, "ms", one.tauMs(), two.tauMs(), TIME_SHARE, 0);
        share(
            "rippleVrms",
            rail,
            "V",
            one.rippleVrms(),
            two.rippleVrms(),
            RIPPLE_SHARE,
            step(channel) / 10,
            channel);
      }
    }

    void levels() {
      Summary.LevelFigures one = before.levels();
      Summary.LevelFigures two = after.levels();
      if (one != null && two != null) {
        decibels("headDbv", one.headDbv(), two.headDbv(), Channel.H);
        decibels("meterDbv", one.meterDbv(), two.meterDbv(), Channel.M);
        decibels(
            "headBelowMeterDb",
            one.headBelowMeterDb(),
            two.headBelowMeterDb(),
            Channel.H,
            Channel.M);
        decibels("humDbv", one.humDbv(), two.humDbv(), Channel.H);
      }
    }

    private void means(
        String figure,
        int rail,
        String unit,
        Double one,
        Double two,
        Channel channel,
        ToDoubleFunction<PowerUpCourse.SecondMean> of) {
      if (one == null || two == null) {
        return;
      }
      double extra = calibrationShare(channel, one, two);
      Welch welch = Welch.of(seconds(before, of), seconds(after, of), extra);
      if (welch == null) {
        share(figure, rail, unit, one, two, 0, step(channel), channel);
        return;
      }
      // A thousandth of a step: two quiet records must not differ by their rounding.
      boolean real = welch.significant() && Math.abs(welch.difference()) > step(channel) / 1000;
      differences.add(
          new Difference(
              figure,
              rail,
              unit,
              Moments.of(seconds(before, of)).mean(),
              Moments.of(seconds(after, of)).mean(),
              welch.difference(),
              welch.plusMinus(),
              real,
              welch.p()));
    }

    private static double[] seconds(
        Evidence evidence, ToDoubleFunction<PowerUpCourse.SecondMean> of) {
      PowerUpCourse course = evidence.course();
      int from = course.steadyFrom();
      return course.seconds().stream()
          .filter(mean -> mean.second() >= from)
          .mapToDouble(of)
          .toArray();
    }

    private void share(
        String figure,
        int rail,
        String unit,
        Double one,
        Double two,
        double repeatShare,
        double resolution,
        Channel... channels) {
      if (one == null || two == null) {
        return;
      }
      double variance = resolution * resolution / 6;
      variance += repeatShare * repeatShare * (one * one + two * two);
      for (Channel channel : channels) {
        double extra = calibrationShare(channel, one, two);
        variance += extra * extra;
      }
      add(figure, rail, unit, one, two, Uncertainty.COVERAGE * Math.sqrt(variance));
    }

    private void decibels(String figure, Double one, Double two, Channel... channels) {
      if (one == null || two == null) {
        return;
      }
      double variance = 2 * LEVEL_DB * LEVEL_DB;
      for (Channel channel : channels) {
        double extra = DB_PER_SHARE * calibrationShare(channel, 1, 1);
        variance += extra * extra;
      }
      add(figure, 0, "dB", one, two, Uncertainty.COVERAGE * Math.sqrt(variance));
    }

    private void add(
        String figure, int rail, String unit, double one, double two, double plusMinus) {
      double difference = two - one;
      differences.add(
          new Difference(
              figure,
              rail,
              unit,
              one,
              two,
              difference,
              plusMinus,
              Math.abs(difference) > plusMinus,
              null));
    }

    private double calibrationShare(Channel channel, double one, double two) {
      if (oneCalibration) {
        return 0;
      }
      return Math.hypot(
          new Uncertainty(before.calibration()).gain(channel) * one,
          new Uncertainty(after.calibration()).gain(channel) * two);
    }

    private double step(Channel channel) {
      return Math.abs(before.calibration().scale(channel).perCount());
    }
  }
}
