package firstamp.analysis.figures;

import firstamp.analysis.spectrum.HumPair;
import firstamp.analysis.spectrum.LevelPair;
import firstamp.analysis.statistics.FirstOrderFit;
import firstamp.analysis.statistics.Moments;
import firstamp.analysis.statistics.Uncertainty;
import firstamp.model.Happening;
import firstamp.model.JobSheet;
import firstamp.model.Summary;
import firstamp.model.samples.Channel;
import firstamp.model.samples.Reading;
import firstamp.model.samples.RippleWindow;
import firstamp.model.samples.SamplePlan;
import firstamp.model.samples.Scaling;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;
import java.util.function.ToDoubleFunction;

/**
 * The time on cut where something was changed, so that before and after can be compared within one
 * power-up. A moved clip starts no new stretch: what it reads is not a figure of the set. Not
 * thread-safe.
 */
final class Stretches {
  /** Events beyond this begin no stretch of their own: memory stays bounded. */
  private static final int MOST = 64;

  private final Supplier<SteadySums> empty;
  private final List<Stretch> all = new ArrayList<>();

  /**
   * Nothing has happened yet.
   *
   * @param empty makes empty sums
   */
  Stretches(Supplier<SteadySums> empty) {
    this.empty = empty;
  }

  private static final class Stretch {
    private final long fromMicros;
    private final Happening begin;
    private final SteadySums sums;
    private long toMicros = Long.MAX_VALUE;

    Stretch(long fromMicros, Happening begin, SteadySums sums) {
      this.fromMicros = fromMicros;
      this.begin = begin;
      this.sums = sums;
    }

    boolean holds(long beginMicros, long endMicros) {
      return beginMicros >= fromMicros && endMicros <= toMicros;
    }
  }

  /** The switch closed: the time before the first change begins. */
  void closed(long micros) {
    all.clear();
    all.add(new Stretch(micros, null, empty.get()));
  }

  /** Something happened while the switch is closed. */
  void begin(long micros, Happening what) {
    if (!what.parts()) {
      return;
    }
    Stretch last = all.isEmpty() ? null : all.get(all.size() - 1);
    if (last != null && all.size() < MOST && micros > last.fromMicros) {
      last.toMicros = micros;
      all.add(new Stretch(micros, what, empty.get()));
    }
  }

  public void add(Reading reading, Scaling scaling) {
    for (Stretch stretch : all) {
      if (stretch.holds(reading.startMicros(), reading.endMicros())) {
        long since = reading.startMicros() - stretch.fromMicros;
        stretch.sums.add((int) (since / OnInterval.READING_MICROS), reading, scaling);
      }
    }
  }

  public void add(LevelPair pair) {
    SteadySums sums = of(pair.window().firstIndex(), pair.window().endIndex());
    if (sums != null) {
      sums.add(pair);
    }
  }

  public void add(RippleWindow window) {
    SteadySums sums = of(window.firstIndex(), window.endIndex());
    if (sums != null) {
      sums.add(window);
    }
  }

  public void add(HumPair pair) {
    SteadySums sums = of(pair.firstIndex(), pair.endIndex());
    if (sums != null) {
      sums.add(pair);
    }
  }

  private SteadySums of(long firstIndex, long endIndex) {
    for (Stretch stretch : all) {
      if (stretch.holds(SamplePlan.microsOf(firstIndex), SamplePlan.microsOf(endIndex))) {
        return stretch.sums;
      }
    }
    return null;
  }

  Stretches copy() {
    Stretches copy = new Stretches(empty);
    for (Stretch stretch : all) {
      Stretch same = new Stretch(stretch.fromMicros, stretch.begin, stretch.sums.copy());
      same.toMicros = stretch.toMicros;
      copy.all.add(same);
    }
    return copy;
  }

  /** What each stretch showed; empty where nothing happened. */
  List<Evidence.Stretch> evidence(
      JobSheet sheet, Scaling scaling, OnInterval time, LevelSums before) {
    List<Evidence.Stretch> found = new ArrayList<>();
    for (int k = 0; k < all.size() && all.size() > 1; k++) {
      Stretch stretch = all.get(k);
      long toMicros = Math.min(stretch.toMicros, time.endMicros());
      if (toMicros > stretch.fromMicros) {
        found.add(
            new Evidence.Stretch(
                k,
                stretch.begin == null ? null : stretch.begin.words(),
                stretch.begin instanceof Happening.SetChanged,
                time.ms(stretch.fromMicros),
                time.ms(toMicros),
                evidence(stretch.sums, sheet, scaling, toMicros - stretch.fromMicros, before)));
      }
    }
    return found;
  }

  private static Evidence evidence(
      SteadySums sums, JobSheet sheet, Scaling scaling, long micros, LevelSums before) {
    PowerUpTrend course = sums.course();
    List<Evidence.RailRipple> ripples = SteadyEvidence.ripples(sums, sheet);
    Summary.SupplyFigures supply = supply(course, scaling);
    List<Summary.RailFigures> rails = new ArrayList<>();
    for (JobSheet.Rail rail : sheet.rails()) {
      rails.add(rail(rail, sums, course, scaling));
    }
    return new Evidence(
        null,
        supply,
        rails,
        LevelCalculation.figures(sums.levels(), sheet.levels()),
        micros / 1000.0,
        course,
        ripples,
        new RailCalculation(sheet, scaling.calibration())
            .more(rails, null, ripples, supply.steadyA(), new FirstOrderFit[4]),
        SteadyEvidence.heard(sums, sheet, before),
        null,
        false,
        null,
        null,
        List.of(),
        scaling.calibration(),
        Evidence.Clips.JOINED);
  }

  private static Summary.SupplyFigures supply(PowerUpTrend course, Scaling scaling) {
    Moments amps = steady(course, PowerUpTrend.SecondMean::amps);
    Moments volts = steady(course, PowerUpTrend.SecondMean::volts);
    if (amps.count() == 0) {
      return new Summary.SupplyFigures(null, null, null, null, null, null, null);
    }
    Uncertainty uncertainty = new Uncertainty(scaling.calibration());
    Channel channel = amps.mean() > Scaling.FINE_HIGHEST_A ? Channel.I : Channel.J;
    return new Summary.SupplyFigures(
        null,
        null,
        null,
        amps.mean(),
        uncertainty.expanded(channel, amps.mean(), amps.meanUncertainty()),
        volts.mean(),
        uncertainty.expanded(Channel.V, volts.mean(), volts.meanUncertainty()));
  }

  private static Summary.RailFigures rail(
      JobSheet.Rail rail, SteadySums sums, PowerUpTrend course, Scaling scaling) {
    int input = rail.input();
    RippleSums.Ripple ripple = sums.ripple(input);
    Moments volts = steady(course, mean -> mean.railV().get(input - 1));
    Channel channel = Channel.ofRail(input);
    if (volts.count() == 0) {
      return RailCalculation.ripplesOnly(rail, ripple);
    }
    return new Summary.RailFigures(
        input,
        rail.name(),
        volts.mean(),
        new Uncertainty(scaling.calibration())
            .expanded(channel, volts.mean(), volts.meanUncertainty()),
        null,
        null,
        null,
        null,
        null,
        ripple == null ? null : (Double) ripple.rmsV(),
        ripple == null ? null : (Double) ripple.strongestHz());
  }

  private static Moments steady(PowerUpTrend course, ToDoubleFunction<PowerUpTrend.SecondMean> of) {
    return Moments.of(course.steady(of));
  }
}
