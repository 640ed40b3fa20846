package firstamp.window.present;

import firstamp.bench.Snapshot;
import firstamp.model.Alarm;
import firstamp.model.AlarmState;
import firstamp.model.JobSheet;
import firstamp.model.Priority;
import firstamp.trend.Course;
import firstamp.window.present.BenchView.FigureView;
import firstamp.window.widgets.Tone;
import firstamp.window.words.Numbers;
import firstamp.window.words.Words;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.function.Predicate;

/** Makes the row of large figures: supply, rails, head against meter. */
final class FigurePresenter {
  private static final Set<String> ABOUT_VOLTS =
      Set.of("rail-window", "over-voltage", "wrong-polarity", "rail-late");
  private static final String DASH = "\u2013";

  private final Words words;
  private final Numbers numbers;
  private final LevelFigure levels;

  FigurePresenter(Words words, Numbers numbers) {
    this.words = words;
    this.numbers = numbers;
    this.levels = new LevelFigure(words, numbers);
  }

  List<FigureView> figures(Snapshot now) {
    List<FigureView> row = new ArrayList<>();
    row.add(supplyCurrent(now));
    row.add(supplyVolts(now));
    for (Snapshot.Rail rail : now.figures().rails()) {
      row.add(rail(now, rail));
    }
    if (now.sheet().levels() != null
        || now.figures().levels().meterDbv() != null
        || now.figures().levels().headDbv() != null) {
      row.add(levels.of(now));
    }
    return row;
  }

  private FigureView supplyCurrent(Snapshot now) {
    String name = words.get("figure.current");
    if (now.figures().supplyA() == null) {
      return absent(name, words.get("figure.nothing"));
    }
    Numbers.Written written = numbers.amps(now.figures().supplyA());
    Double limit = now.limits().runningA();
    boolean over =
        limit != null
            && now.phase() == Snapshot.Phase.ON
            && now.figures().supplyA() > limit
            && !inInrushTime(now);
    return new FigureView(
        name,
        written.number(),
        written.unit(),
        over
            ? words.get("figure.over")
            : trend(now, Course.Quantity.SUPPLY_A, now.figures().supplyA(), 0.0005),
        limit == null
            ? words.get("figure.noLimit")
            : words.get("figure.limit", numbers.amps(limit)),
        over ? Tone.ALARM : Tone.PLAIN);
  }

  private static boolean inInrushTime(Snapshot now) {
    Double inrushMs = now.limits().inrushMs();
    return inrushMs != null
        && now.times().elapsedMs() != null
        && now.times().elapsedMs() < inrushMs;
  }

  private FigureView supplyVolts(Snapshot now) {
    String name = words.get("figure.volts");
    if (now.figures().supplyV() == null) {
      return absent(name, words.get("figure.nothing"));
    }
    boolean judged =
        now.phase() == Snapshot.Phase.ON
            && now.times().elapsedMs() != null
            && now.times().elapsedMs() > 500;
    return windowed(
        now,
        name,
        Course.Quantity.SUPPLY_V,
        now.figures().supplyV(),
        now.limits().lowV(),
        now.limits().highV(),
        judged,
        0);
  }

  private FigureView rail(Snapshot now, Snapshot.Rail rail) {
    String name = words.get("figure.rail", rail.name(), rail.input());
    if (rail.volts() == null && now.figures().supplyV() == null) {
      return absent(name, words.get("figure.notYet"));
    }
    if (rail.volts() == null) {
      return new FigureView(name, DASH, "", words.get("figure.clipOff"), "", Tone.CAUTION);
    }
    boolean off = now.phase() != Snapshot.Phase.ON;
    if (off && now.times().closedMs() != null) {
      return fallingRail(now, rail, name);
    }
    return windowed(
        now,
        name,
        Course.Quantity.ofRail(rail.input()),
        rail.volts(),
        rail.lowV(),
        rail.highV(),
        !off && rail.judged(),
        rail.input());
  }

  /** After the switch has opened: volts until they are down, never a word that promises safety. */
  private FigureView fallingRail(Snapshot now, Snapshot.Rail rail, String name) {
    // The newest 10 ms, not a mean that lags behind: it decides when a hand may come near.
    double volts = newest(now, Course.Quantity.ofRail(rail.input()), rail.volts());
    boolean down = isDown(now.sheet().rail(rail.input()), volts);
    Numbers.Written written = numbers.volts(volts);
    return new FigureView(
        name,
        written.number(),
        written.unit(),
        words.get(
            down
                ? "figure.down"
                : now.phase() == Snapshot.Phase.ENDED ? "figure.wasUp" : "figure.stillUp"),
        down
            ? ""
            : words.get("figure.waitDown", numbers.volts(downV(now.sheet().rail(rail.input())))),
        down ? Tone.PLAIN : Tone.CAUTION);
  }

  private static double newest(Snapshot now, Course.Quantity quantity, double otherwise) {
    float[] mean = new float[1];
    now.course()
        .columns(
            quantity,
            now.times().nowMs() - Course.SLOT_MS,
            now.times().nowMs(),
            1,
            new float[1],
            new float[1],
            mean);
    return Float.isNaN(mean[0]) ? otherwise : mean[0];
  }

  /** Whether a rail counts as down: under the smaller of 10 V and a tenth of nominal. */
  static boolean isDown(JobSheet.Rail rail, double volts) {
    return Math.abs(volts) < downV(rail);
  }

  private static double downV(JobSheet.Rail rail) {
    return rail == null || rail.nominalV() == null
        ? 1
        : Math.min(10, Math.abs(rail.nominalV()) / 10);
  }

  private FigureView windowed(
      Snapshot now,
      String name,
      Course.Quantity quantity,
      double volts,
      Double lowV,
      Double highV,
      boolean judged,
      int rail) {
    Numbers.Written written = numbers.volts(volts);
    String window =
        lowV == null || highV == null
            ? words.get("figure.noWindow")
            : words.get("figure.window", numbers.volts(lowV).number(), numbers.volts(highV));
    String word = trend(now, quantity, volts, 0.02);
    Tone tone = Tone.PLAIN;
    if (judged && lowV != null && highV != null) {
      // Low and high mean magnitude: a rail of -9 V that stands at -7 V is low.
      double near = Math.min(Math.abs(lowV), Math.abs(highV));
      boolean outside = volts < Math.min(lowV, highV) || volts > Math.max(lowV, highV);
      if (outside) {
        boolean wrongSide = volts * (lowV + highV) < 0 && Math.abs(volts) > 0.5;
        word =
            words.get(
                wrongSide
                    ? "figure.wrongSide"
                    : Math.abs(volts) < near ? "figure.low" : "figure.high");
        tone = toneOf(now, alarm -> alarm.rail() == rail && ABOUT_VOLTS.contains(alarm.rule()));
      } else {
        word = word.isEmpty() ? words.get("figure.insideAlone") : words.get("figure.inside", word);
      }
    } else if (rail > 0 && now.phase() == Snapshot.Phase.ON && lowV != null) {
      word = words.get("figure.settling");
    }
    return new FigureView(name, written.number(), written.unit(), word, window, tone);
  }

  /** As urgent as the alarm about it; while none has been raised yet, amber. */
  static Tone toneOf(Snapshot now, Predicate<Alarm> about) {
    boolean high =
        now.findings().alarms().stream()
            .anyMatch(
                alarm ->
                    about.test(alarm)
                        && alarm.priority() == Priority.HIGH
                        && alarm.state() != AlarmState.CLEARED);
    return high ? Tone.ALARM : Tone.CAUTION;
  }

  private FigureView absent(String name, String why) {
    return new FigureView(name, DASH, "", why, "", Tone.PLAIN);
  }

  private String trend(Snapshot now, Course.Quantity quantity, double value, double atLeast) {
    if (now.phase() == Snapshot.Phase.ENDED) {
      return words.get("figure.lastSeen");
    }
    Trend trend = Trend.of(now.course(), quantity, now.times().nowMs(), atLeast);
    return trend == null ? "" : words.get(trend.key());
  }
}
