package firstamp.account;

import firstamp.analysis.figures.Evidence;
import firstamp.analysis.figures.PowerUpTrend;
import firstamp.analysis.statistics.Moments;
import firstamp.analysis.statistics.Uncertainty;
import firstamp.analysis.statistics.Welch;
import firstamp.model.Summary;
import firstamp.model.samples.Channel;
import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;

/** Works out the differences of a {@link Comparison}, figure by figure. */
final class Differences {
  private static final double PEAK_SHARE = 0.03;
  private static final double HEAT_SHARE = 0.06;
  private static final double CHARGE_SHARE = 0.02;
  private static final double TIME_SHARE = 0.03;
  private static final double RIPPLE_SHARE = 0.03;
  private static final double FILTER_SHARE = 0.04;
  private static final double LOOK_SHARE = 0.02;
  private static final double LEVEL_DB = 0.25;
  private static final double READING_MS = 10;

  /** Times over which the heat of an inrush and the charge are summed. */
  private static final double INRUSH_MS = 100;

  private static final double CHARGE_MS = 1000;

  /**
   * Standard uncertainty of a zero in counts: the probe takes it as the mean of 200 ms, which is
   * 800 conversions of I, 100 of J and of V, each with about one count of noise.
   */
  private static final double ZERO_OF_I_COUNTS = 1 / Math.sqrt(800);

  private static final double ZERO_COUNTS = 1 / Math.sqrt(100);
  private static final double DB_PER_SHARE = 20 / StrictMath.log(10);

  private final Evidence before;
  private final Evidence after;
  private final boolean oneCalibration;
  private final double leakageA;
  final List<Comparison.Difference> differences = new ArrayList<>();

  Differences(Evidence before, Evidence after, boolean oneProbe, Double leakageA) {
    this.before = before;
    this.after = after;
    this.oneCalibration =
        oneProbe && Comparison.oneCalibration(before.calibration(), after.calibration());
    this.leakageA = leakageA == null ? 0 : Math.abs(leakageA);
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
    if (bothLasted(INRUSH_MS)) {
      inrush(one, two);
    }
    if (bothLasted(CHARGE_MS)) {
      share("chargeC", 0, "C", one.chargeC(), two.chargeC(), CHARGE_SHARE, 0, Channel.I);
    }
    means(
        "steadyA",
        0,
        "A",
        one.steadyA(),
        two.steadyA(),
        two.steadyA() != null && two.steadyA() > 0.35 ? Channel.I : Channel.J,
        PowerUpTrend.SecondMean::amps);
    means(
        "steadyV", 0, "V", one.steadyV(), two.steadyV(), Channel.V, PowerUpTrend.SecondMean::volts);
  }

  /** Peak and heat of an inrush that was seen to its end both times. */
  private void inrush(Summary.SupplyFigures one, Summary.SupplyFigures two) {
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
  }

  /** Whether both were on so long: a sum over a shorter time is another figure. */
  private boolean bothLasted(double ms) {
    return lasted(before, ms) && lasted(after, ms);
  }

  private static boolean lasted(Evidence evidence, double ms) {
    return evidence.onMs() == null || evidence.onMs() >= ms;
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
      share("filterUf", rail, "uF", filterUf(before, rail), filterUf(after, rail), FILTER_SHARE, 0);
    }
  }

  private static Double filterUf(Evidence evidence, int rail) {
    Evidence.RailMore more = evidence.more(rail);
    return more == null || more.filter() == null || more.filter().atMost()
        ? null
        : (Double) more.filter().uF();
  }

  void levels() {
    Summary.LevelFigures one = before.levels();
    Summary.LevelFigures two = after.levels();
    if (one != null && two != null) {
      decibels("headDbv", one.headDbv(), two.headDbv(), Channel.H);
      decibels("meterDbv", one.meterDbv(), two.meterDbv(), Channel.M);
      decibels(
          "headBelowMeterDb", one.headBelowMeterDb(), two.headBelowMeterDb(), Channel.H, Channel.M);
      decibels("humDbv", one.humDbv(), two.humDbv(), Channel.H);
      speech(before.heard(), after.heard());
      decibels("noiseDbv", before.heard().noiseDbv(), after.heard().noiseDbv(), Channel.H);
      decibels("needleVu", before.heard().needleVu(), after.heard().needleVu(), Channel.M);
    }
  }

  private void speech(Evidence.Heard one, Evidence.Heard two) {
    if (one.speechDbPlusMinus() != null && two.speechDbPlusMinus() != null) {
      double scatter = Math.hypot(one.speechDbPlusMinus(), two.speechDbPlusMinus());
      double gain = DB_PER_SHARE * Math.hypot(gains(Channel.H), gains(Channel.M));
      double plusMinus = Math.hypot(scatter, Uncertainty.COVERAGE * gain);
      add("speechDb", 0, "dB", one.speechDb(), two.speechDb(), plusMinus);
    }
  }

  private double gains(Channel channel) {
    return calibrationShare(channel, 1, 1);
  }

  private void means(
      String figure,
      int rail,
      String unit,
      Double one,
      Double two,
      Channel channel,
      ToDoubleFunction<PowerUpTrend.SecondMean> of) {
    if (one == null || two == null) {
      return;
    }
    double extra = Math.hypot(calibrationShare(channel, one, two), zeros(channel));
    if (figure.equals("steadyA")) {
      // It may be all of it or nothing: a rectangular distribution (JCGM 100:2008, 4.3.7).
      extra = Math.hypot(extra, leakageA / Math.sqrt(3));
    }
    Welch welch = Welch.of(before.course().steady(of), after.course().steady(of), extra);
    if (welch == null) {
      share(figure, rail, unit, one, two, 0, step(channel), channel);
      return;
    }
    // A thousandth of a step: two quiet recordings must not differ by rounding alone.
    boolean real = welch.significant() && Math.abs(welch.difference()) > step(channel) / 1000;
    differences.add(
        new Comparison.Difference(
            figure,
            rail,
            unit,
            Moments.of(before.course().steady(of)).mean(),
            Moments.of(after.course().steady(of)).mean(),
            welch.difference(),
            welch.plusMinus(),
            real,
            welch.p()));
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
      double extra = DB_PER_SHARE * gains(channel);
      variance += extra * extra;
    }
    add(figure, 0, "dB", one, two, Uncertainty.COVERAGE * Math.sqrt(variance));
  }

  private void add(String figure, int rail, String unit, double one, double two, double plusMinus) {
    double difference = two - one;
    differences.add(
        new Comparison.Difference(
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

  /** Each of the two power-ups has a zero of its own, however long it was watched after it. */
  private double zeros(Channel channel) {
    double counts =
        switch (channel) {
          case I -> ZERO_OF_I_COUNTS;
          case J, V -> ZERO_COUNTS;
          default -> 0;
        };
    return Math.sqrt(2) * counts * step(channel);
  }

  private double step(Channel channel) {
    return Math.abs(before.calibration().scale(channel).perCount());
  }
}
