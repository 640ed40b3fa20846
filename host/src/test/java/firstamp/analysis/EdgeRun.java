package firstamp.analysis;

import firstamp.analysis.figures.Evidence;
import firstamp.analysis.figures.PowerUpFigures;
import firstamp.analysis.spectrum.LevelMeter;
import firstamp.analysis.spectrum.RippleMeter;
import firstamp.model.JobSheet;
import firstamp.model.Look;
import firstamp.model.OffCause;
import firstamp.model.ProbeEvent;
import firstamp.model.SwitchState;
import firstamp.model.samples.Channel;
import firstamp.model.samples.ConversionBlock;
import firstamp.model.samples.ReadingReducer;
import firstamp.model.samples.SamplePlan;
import firstamp.model.samples.Zero;
import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;

/** One situation, fed into the figures. The switch closes after 2 s and opens 5 s later. */
final class EdgeRun {
  private static final long CLOSED = 2;
  final String name;
  final SignalFeed feed = new SignalFeed().noise(0.7, 41);
  private double onMs = 5000;
  private String rectifier = "full";
  private Double nominalV = 9.0;
  private JobSheet.Levels levels = new JobSheet.Levels(400.0, 10.0, 38.0, 6.0, -30.0, 500.0, null);

  EdgeRun(String name) {
    this.name = name;
    feed.amps(after(t -> 1.2 * Math.exp(-t / 0.03) + 0.12))
        .with(Channel.V, after(t -> 12))
        .rail(1, after(t -> 9 * (1 - Math.exp(-t / 0.05)) + saw(t, 100)))
        .with(Channel.M, after(SignalFeed.sine(0.126, 400)))
        .with(
            Channel.H,
            after(
                t ->
                    SignalFeed.sine(1.26e-3, 400).applyAsDouble(t)
                        + SignalFeed.sine(2e-5, 800).applyAsDouble(t)
                        + 1e-3 * saw(t, 100)));
    set();
  }

  /** 0.12 A out of 2000 uF at so many pulses a second. */
  private static double saw(double t, double hz) {
    return 0.12 / (hz * 2000e-6) * (0.5 - t * hz % 1);
  }

  static DoubleUnaryOperator after(DoubleUnaryOperator course) {
    return t -> t < CLOSED ? 0 : course.applyAsDouble(t - CLOSED);
  }

  /** Speech-like: three tones that come and go. */
  private static double speech(double t) {
    double swell = 0.6 + 0.4 * Math.sin(2 * Math.PI * 1.3 * t);
    return swell
        * (SignalFeed.sine(0.05, 187).applyAsDouble(t)
            + SignalFeed.sine(0.08, 613).applyAsDouble(t)
            + SignalFeed.sine(0.03, 1210).applyAsDouble(t));
  }

  private void set() {
    switch (name) {
      case "on for half a second" -> onMs = 500;
      case "on for 90 ms" -> onMs = 90;
      case "rail at the end of its range" -> feed.rail(1, after(t -> 25));
      case "ripple reaches the end of the range" -> feed.rail(1, after(t -> 19.9 + saw(t, 100)));
      case "head at the end of its range" ->
          feed.with(Channel.H, after(SignalFeed.sine(9e-3, 400)));
      case "no mains ripple" -> feed.rail(1, after(t -> 9 * (1 - Math.exp(-t / 0.05))));
      case "dc only" ->
          feed.amps(after(t -> 0.12))
              .rail(1, after(t -> 9))
              .with(Channel.M, t -> 0.5)
              .with(Channel.H, t -> 1e-3);
      case "silence" -> feed.with(Channel.M, t -> 0).with(Channel.H, t -> 0);
      case "no tone on the sheet" ->
          levels = new JobSheet.Levels(null, 10.0, 38.0, 6.0, -30.0, 500.0, null);
      case "speech" -> voice();
      case "speech, nothing expected" -> {
        voice();
        levels = new JobSheet.Levels(400.0, 10.0, null, 6.0, -30.0, 500.0, null);
      }
      case "meter input is the movement" -> {
        levels = new JobSheet.Levels(400.0, 10.0, 38.0, 6.0, -30.0, 500.0, 1.0);
        feed.with(Channel.M, after(t -> 0.6));
      }
      case "no levels on the sheet" -> levels = null;
      case "rail swings over and is pulled down" ->
          feed.rail(1, after(t -> t < 0.5 ? 11 : t > 2 && t < 3 ? 8 : 9));
      case "ripple at the wrong frequency" -> feed.rail(1, after(t -> 9 + saw(t, 50)));
      case "no rectifier on the sheet" -> rectifier = "none";
      case "nothing flows" -> feed.noise(0, 1).amps(t -> 0);
      case "current never rests" -> feed.amps(after(t -> 0.1 + 0.03 * t));
      default -> {
        // The courses as they are.
      }
    }
  }

  private void voice() {
    feed.with(Channel.M, after(EdgeRun::speech)).with(Channel.H, after(t -> 0.0126 * speech(t)));
  }

  private JobSheet sheet() {
    return Sheets.sheet(
        levels, new JobSheet.Rail(1, "B1", nominalV, 10.0, 400.0, 20.0, null, 2000.0, rectifier));
  }

  private boolean inGap(long index) {
    double ms = index * 0.0625 - 1000.0 * CLOSED;
    return switch (name) {
      case "gap in the first 100 ms" -> ms >= 30 && ms < 45;
      case "gap in the last second" -> ms >= 4300 && ms < 4700;
      case "gap in every window" -> ms >= 400 && index % 3200 == 1600;
      default -> false;
    };
  }

  Evidence evidence() {
    JobSheet sheet = sheet();
    PowerUpFigures figures = new PowerUpFigures(sheet, feed.calibration(), 330, 10);
    ReadingReducer reducer = new ReadingReducer(figures::onReading);
    LevelMeter meter =
        new LevelMeter(sheet, feed.calibration(), figures::onLevels, figures::onDetail);
    RippleMeter ripple =
        new RippleMeter(sheet, feed.calibration(), figures::onRipple, figures::onRailLines);
    if (!name.equals("no look")) {
      figures.onEvent(new ProbeEvent.Looked(1_900_000, look()));
    }
    long end = Math.round((CLOSED + onMs / 1000) * SamplePlan.CONVERSIONS_PER_SECOND) + 3200;
    for (long at = 0; at < end; at += 160) {
      if (at == CLOSED * 16_000 && !name.equals("never closed")) {
        figures.onEvent(
            new ProbeEvent.SwitchChanged(CLOSED * 1_000_000, SwitchState.ON, OffCause.USER));
      }
      for (ConversionBlock block : pieces(at)) {
        figures.accept(block);
        meter.accept(block);
        ripple.accept(block);
        reducer.accept(block.firstIndex(), block.counts(), 0, block.counts().length);
      }
    }
    figures.onEvent(
        new ProbeEvent.SwitchChanged(
            Math.round(CLOSED * 1e6 + onMs * 1000), SwitchState.OFF, OffCause.TIME));
    return figures.evidence();
  }

  /** A stretch of 160 conversions without what the gap took. */
  private List<ConversionBlock> pieces(long at) {
    List<ConversionBlock> pieces = new ArrayList<>();
    int from = 0;
    for (int k = 0; k <= 160; k++) {
      if (k == 160 || inGap(at + k)) {
        if (k > from) {
          pieces.add(feed.block(at + from, k - from));
        }
        from = k + 1;
      }
    }
    return pieces;
  }

  /** 12 V behind 330 ohm into 1000 ohm and 2000 uF for 2 s, as the probe counts it. */
  private static Look look() {
    int pairs = 1000;
    double parallel = 330.0 * 1000 / 1330;
    double tau = 2000e-6 * parallel;
    long sumV = 0;
    long sumJ = 0;
    double countV = 0;
    double countJ = 0;
    for (int k = 0; k < pairs; k++) {
      double volts = 12.0 * 1000 / 1330 * (1 - Math.exp(-k * 0.002 / tau));
      countV = volts / 60 * 1024;
      countJ = (12 - volts) / 330 / 0.4 * 1024;
      sumV += Math.round(countV);
      sumJ += Math.round(countJ);
    }
    return new Look(
        Look.Result.CLEAR,
        true,
        0,
        1_900_000,
        Zero.NONE,
        pairs,
        (int) Math.round(16 * countV),
        (int) Math.round(16 * countJ),
        sumV,
        sumJ);
  }
}
