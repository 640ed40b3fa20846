package firstamp.window.present;

import firstamp.alarm.AlarmWords;
import firstamp.bench.LookScale;
import firstamp.bench.Snapshot;
import firstamp.model.JobSheet;
import firstamp.model.NotWatched;
import firstamp.model.limits.Coverage;
import firstamp.window.present.BenchView.FigureView;
import firstamp.window.widgets.Tone;
import firstamp.window.words.Numbers;
import firstamp.window.words.Words;
import java.util.List;

/** Makes the large figure of head against meter; a clip that is off is said in its place. */
final class LevelFigure {
  private static final String HEAD_CLIP_OFF = "figure.headClipOff";
  private static final String METER_CLIP_OFF = "figure.meterClipOff";
  private static final String DASH = "\u2013";

  private final Words words;
  private final Numbers numbers;

  LevelFigure(Words words, Numbers numbers) {
    this.words = words;
    this.numbers = numbers;
  }

  FigureView of(Snapshot now) {
    JobSheet.Levels levels = now.sheet().levels();
    Double expected = levels == null ? null : levels.expectedDb();
    String clipOff = clipOff(now);
    String more =
        words.get("figure.headMeter", head(now, clipOff), meter(now.figures().levels(), clipOff));
    boolean none =
        now.figures().levels().headDbv() == null && now.figures().levels().meterDbv() == null;
    if (!none && LookScale.levelsUncalibrated(now)) {
      more = words.get("figure.uncalibrated", more);
    }
    boolean quiet =
        now.figures().levels().meterDbv() == null
            || levels != null
                && levels.meterSignalDbv() != null
                && now.figures().levels().meterDbv() < levels.meterSignalDbv();
    if (clipOff != null || now.figures().levels().headBelowMeterDb() == null || quiet) {
      return new FigureView(
          words.get("figure.levels"),
          DASH,
          "",
          words.get(clipOff != null ? clipOff : quietWord(now)),
          more,
          clipOff != null ? Tone.ASK : Tone.PLAIN);
    }
    Numbers.Written written = numbers.decibels(now.figures().levels().headBelowMeterDb(), "dB");
    if (expected == null) {
      return new FigureView(
          words.get("figure.levels"),
          written.number(),
          written.unit(),
          words.get("figure.noExpected"),
          more,
          Tone.PLAIN);
    }
    double margin = levels.marginDb() == null ? 6 : levels.marginDb();
    boolean weak = now.figures().levels().headBelowMeterDb() > expected + margin;
    if (weak && now.findings().alarms().stream().anyMatch(AlarmWords::headSilent)) {
      return new FigureView(
          words.get("figure.levels"),
          DASH,
          "",
          words.get("figure.headNone", numbers.fixed(expected, 0)),
          more,
          FigurePresenter.toneOf(now, AlarmWords::headSilent));
    }
    return new FigureView(
        words.get("figure.levels"),
        written.number(),
        written.unit(),
        words.get(weak ? "figure.headWeak" : "figure.expected", numbers.fixed(expected, 0)),
        more,
        weak
            ? FigurePresenter.toneOf(now, alarm -> alarm.rule().equals("head-below-meter"))
            : Tone.PLAIN);
  }

  private Object head(Snapshot now, String clipOff) {
    Snapshot.Levels levels = now.figures().levels();
    if (HEAD_CLIP_OFF.equals(clipOff) || levels.headDbv() == null && levels.headUa() == null) {
      return DASH;
    }
    return levels.headUa() != null
        ? numbers.microamps(levels.headUa())
        : numbers.decibels(levels.headDbv(), "dBV");
  }

  private Object meter(Snapshot.Levels levels, String clipOff) {
    return METER_CLIP_OFF.equals(clipOff) || levels.meterDbv() == null
        ? DASH
        : numbers.decibels(levels.meterDbv(), "dBV");
  }

  private static String quietWord(Snapshot now) {
    return now.figures().levels().meterDbv() == null ? "figure.noLevels" : "figure.quietMeter";
  }

  /** Which clip the probe has found joined to nothing before the switch closed; null = none. */
  private static String clipOff(Snapshot now) {
    List<NotWatched> gaps = now.findings().notWatched();
    if (Coverage.says(gaps, Coverage.HEAD_CLIP_OFF)) {
      return HEAD_CLIP_OFF;
    }
    return Coverage.says(gaps, Coverage.METER_CLIP_OFF) ? METER_CLIP_OFF : null;
  }
}
