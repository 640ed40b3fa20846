package firstamp.account;

import firstamp.analysis.SignalFeed;
import firstamp.analysis.figures.PowerUpFigures;
import firstamp.analysis.spectrum.LevelMeter;
import firstamp.analysis.spectrum.RippleMeter;
import firstamp.model.Alarm;
import firstamp.model.Happening;
import firstamp.model.JobSheet;
import firstamp.model.NotWatched;
import firstamp.model.OffCause;
import firstamp.model.ProbeEvent;
import firstamp.model.Summary;
import firstamp.model.SwitchState;
import firstamp.model.samples.Channel;
import firstamp.model.samples.ConversionBlock;
import firstamp.model.samples.ReadingReducer;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.DoubleUnaryOperator;

/** A power-up computed from drawn signals, and the verdict on it. */
abstract class VerdictCase {
  final SignalFeed feed =
      new SignalFeed()
          .noise(0.7, 21)
          .amps(t -> 0.12)
          .with(Channel.V, t -> 12)
          .with(Channel.H, t -> 0)
          .with(Channel.M, t -> 0);

  final Map<Double, String> marks = new HashMap<>();

  static JobSheet.Rail rail(String rectifier, Double uF) {
    return new JobSheet.Rail(1, "B1", 9.0, 10.0, 300.0, 14.0, null, uF, rectifier);
  }

  Verdict run(JobSheet sheet, int seconds, Alarm... alarms) {
    return run(sheet, seconds, 0, alarms);
  }

  /** The switch closes {@code offSeconds} after the start; courses count from the start. */
  Verdict run(JobSheet sheet, int seconds, int offSeconds, Alarm... alarms) {
    PowerUpFigures figures = new PowerUpFigures(sheet, feed.calibration(), 330, 10);
    ReadingReducer reducer = new ReadingReducer(figures::onReading);
    LevelMeter levels =
        new LevelMeter(sheet, feed.calibration(), figures::onLevels, figures::onDetail);
    RippleMeter ripple =
        new RippleMeter(sheet, feed.calibration(), figures::onRipple, figures::onRailLines);
    for (int second = 0; second < seconds + offSeconds; second++) {
      if (second == offSeconds) {
        figures.onEvent(
            new ProbeEvent.SwitchChanged(second * 1_000_000L, SwitchState.ON, OffCause.USER));
      }
      String mark = marks.get((double) (second - offSeconds));
      if (mark != null) {
        figures.onEvent(
            new ProbeEvent.Happened(second * 1_000_000L, new Happening.SetChanged(mark)));
      }
      ConversionBlock block = feed.block(second * 16_000L, 16_000);
      figures.accept(block);
      reducer.accept(block.firstIndex(), block.counts(), 0, 16_000);
      levels.accept(block);
      ripple.accept(block);
    }
    Summary summary =
        new Summary(
            1,
            "u",
            "normal",
            "time",
            null,
            null,
            figures.onMs(),
            figures.look(),
            figures.supply(),
            figures.rails(),
            figures.levels(),
            List.of(),
            List.of(new NotWatched("rail 2", "no clip")),
            List.of(alarms),
            null,
            null,
            null);
    return Verdict.of(sheet, summary, figures.evidence());
  }

  static VerdictSentence find(Verdict verdict, String key) {
    return verdict.sentences().stream()
        .filter(sentence -> sentence.key().equals(key))
        .findFirst()
        .orElseThrow(() -> new AssertionError(key + " not among " + verdict.sentences()));
  }

  /** Full-wave sawtooth of I / (100 Hz C). */
  static DoubleUnaryOperator sawtooth(double meanV, double amps, double uF, double hz) {
    double vpp = amps / (hz * uF * 1e-6);
    return t -> meanV + vpp * (0.5 - t * hz % 1);
  }
}
