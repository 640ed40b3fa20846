package firstamp.analysis.figures;

import firstamp.analysis.spectrum.DelayLine;
import firstamp.analysis.spectrum.HumPair;
import firstamp.analysis.spectrum.LevelPair;
import firstamp.analysis.spectrum.RailLines;
import firstamp.model.JobSheet;
import firstamp.model.samples.Reading;
import firstamp.model.samples.RippleWindow;
import firstamp.model.samples.SamplePlan;
import firstamp.model.samples.Scaling;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;

/**
 * Holds readings and windows back for two seconds: when the switch opened may become known only
 * after what came behind it. Not thread-safe.
 */
final class HeldWindows {
  private static final long HELD_MICROS = 2_000_000;
  private static final long NEVER = Long.MIN_VALUE;
  private static final int RECENT_WINDOWS = 32;
  private static final double USUAL_LEVELS_MS = 1500;
  private static final double USUAL_SETTLE_MS = 500;

  private final JobSheet sheet;
  private final OnInterval time;
  private final RailStarts railStarts;
  private final LevelSums before;
  private final LevelSums noLevels;
  private final DelayLine<Reading> readings = new DelayLine<>(HELD_MICROS);
  private final DelayLine<LevelPair> levels = new DelayLine<>(HELD_MICROS);
  private final DelayLine<RippleWindow> ripple = new DelayLine<>(HELD_MICROS);
  private final DelayLine<HumPair> hum = new DelayLine<>(HELD_MICROS);
  private final Deque<LevelPair> recentLevels = new ArrayDeque<>();
  private final long[] clippedIndex = {NEVER, NEVER, NEVER, NEVER};
  private Scaling scaling;

  /**
   * Nothing held.
   *
   * @param time when the switch was closed
   * @param before empty sums for levels before the closing
   * @param noLevels empty sums that stay empty: they know which windows can be read
   */
  HeldWindows(
      JobSheet sheet,
      OnInterval time,
      RailStarts railStarts,
      LevelSums before,
      LevelSums noLevels) {
    this.sheet = sheet;
    this.time = time;
    this.railStarts = railStarts;
    this.before = before;
    this.noLevels = noLevels;
  }

  /** From now on these zeros hold. */
  void scaling(Scaling next) {
    scaling = next;
  }

  /** Levels before the closing. */
  LevelSums before() {
    return before;
  }

  /** Readings still held that lie in this time. */
  List<Reading> readings(long fromMicros, long toMicros) {
    return readings.within(fromMicros, toMicros);
  }

  /** What is still held, added to these sums; they are returned. */
  ClosingSums allInto(ClosingSums sums) {
    readings.forEach(reading -> take(reading, sums));
    levels.forEach(pair -> take(pair, sums));
    ripple.forEach(window -> take(window, sums));
    hum.forEach(pair -> take(pair, sums));
    return sums;
  }

  void add(Reading reading, ClosingSums sums) {
    readings.put(reading.startMicros(), reading.endMicros(), reading, held -> take(held, sums));
  }

  void add(LevelPair pair, ClosingSums sums) {
    recentLevels.addLast(pair);
    if (recentLevels.size() > RECENT_WINDOWS) {
      recentLevels.removeFirst();
    }
    long from = SamplePlan.microsOf(pair.window().firstIndex());
    if (time.isAfter(from)) {
      return;
    }
    if (!time.isClosed()) {
      before.add(pair.window(), pair.detail());
    }
    long to = SamplePlan.microsOf(pair.window().endIndex());
    levels.put(from, to, pair, held -> take(held, sums));
  }

  void add(RailLines lines, ClosingSums sums) {
    if (lines.clipped()) {
      clippedIndex[lines.rail()] = lines.firstIndex();
      return;
    }
    LevelPair of = levelsAt(lines.firstIndex());
    if (of == null
        || of.detail() == null
        || time.isAfter(SamplePlan.microsOf(lines.firstIndex()))
        || !noLevels.humReadable(of.window())) {
      return;
    }
    HumPair pair =
        new HumPair(
            lines.rail(),
            lines.firstIndex(),
            of.detail().headLines,
            lines.lines(),
            LevelSums.headNoisePerBin(of.window()));
    hum.put(
        SamplePlan.microsOf(pair.firstIndex()),
        SamplePlan.microsOf(pair.endIndex()),
        pair,
        held -> take(held, sums));
  }

  private LevelPair levelsAt(long firstIndex) {
    for (LevelPair pair : recentLevels) {
      if (pair.window().firstIndex() == firstIndex) {
        return pair;
      }
    }
    return null;
  }

  void add(RippleWindow window, ClosingSums sums) {
    long from = SamplePlan.microsOf(window.firstIndex());
    boolean clipped = clippedIndex[window.rail()] == window.firstIndex();
    if (!clipped && !time.isAfter(from)) {
      ripple.put(from, SamplePlan.microsOf(window.endIndex()), window, held -> take(held, sums));
    }
  }

  private void take(Reading reading, ClosingSums into) {
    if (!time.isClosed() || reading.startMicros() < time.closedMicros()) {
      return;
    }
    int number = time.number(reading);
    if (reading.startMicros() < time.endMicros()) {
      into.all().begun(number, reading, scaling);
    }
    if (reading.endMicros() <= time.endMicros()) {
      into.all().whole(number, reading, scaling, sheet);
      into.stretches().add(reading, scaling);
      railStarts.reading(number, reading);
    }
  }

  private void take(LevelPair pair, ClosingSums into) {
    Double fromMs = sheet.levels() == null ? null : sheet.levels().fromMs();
    if (time.holds(
        pair.window().firstIndex(),
        pair.window().endIndex(),
        fromMs == null ? USUAL_LEVELS_MS : fromMs)) {
      into.all().steady().add(pair);
      into.stretches().add(pair);
    }
  }

  private void take(RippleWindow window, ClosingSums into) {
    JobSheet.Rail rail = sheet.rail(window.rail());
    if (rail != null && time.holds(window.firstIndex(), window.endIndex(), settleMs(rail))) {
      into.all().steady().add(window);
      into.stretches().add(window);
    }
  }

  private void take(HumPair pair, ClosingSums into) {
    JobSheet.Rail rail = sheet.rail(pair.rail());
    if (rail != null && time.holds(pair.firstIndex(), pair.endIndex(), settleMs(rail))) {
      into.all().steady().add(pair);
      into.stretches().add(pair);
    }
  }

  private static double settleMs(JobSheet.Rail rail) {
    return rail.settleMs() == null ? USUAL_SETTLE_MS : rail.settleMs();
  }
}
