package firstamp.window.strips;

import firstamp.bench.Snapshot;
import firstamp.model.JobSheet;
import firstamp.model.LimitKind;
import firstamp.study.EarlierPowerUp;
import firstamp.trend.Course;
import firstamp.window.present.Limit;
import firstamp.window.present.ReplayPresenter;
import firstamp.window.strips.StripsPicture.Level;
import firstamp.window.strips.StripsPicture.LevelKind;
import firstamp.window.strips.StripsPicture.Strip;
import firstamp.window.widgets.Columns;
import firstamp.window.widgets.LaneScale;
import firstamp.window.words.Numbers;
import firstamp.window.words.Words;
import java.util.ArrayList;
import java.util.List;

/** Makes the strips out of a snapshot and the stretch of time shown. Mutable, one thread. */
public final class StripMaker {
  private static final int CURRENT_WEIGHT = 26;
  private static final int LEVELS_WEIGHT = 22;

  private final Words words;
  private final Numbers numbers;
  private final SteadyRange currentRange = new SteadyRange(0.02);
  private final LevelsStrip levelsStrip;
  private final VoltsStrip voltsStrip;
  private final EventLane eventLane;
  private final ColumnsSource source = new ColumnsSource();
  private double openTo;

  public StripMaker(Words words, Numbers numbers) {
    this.words = words;
    this.numbers = numbers;
    this.levelsStrip = new LevelsStrip(words, numbers);
    this.voltsStrip = new VoltsStrip(words, numbers, source);
    this.eventLane = new EventLane(words);
  }

  /** The scale of current opens to here, for a limit that is held; 0 = as the trace needs it. */
  void openTo(double amps) {
    openTo = amps;
  }

  public StripsPicture picture(Snapshot now, TimeView time, int pixels) {
    source.begin(now, time, pixels);
    List<Strip> strips = new ArrayList<>();
    strips.add(current(now, source.of(Course.Quantity.SUPPLY_A)));
    strips.add(voltsStrip.supply(now));
    for (Snapshot.Rail rail : now.figures().rails()) {
      strips.add(voltsStrip.rail(now, rail));
    }
    JobSheet.Levels levels = now.sheet().levels();
    if (levels != null) {
      strips.add(levelsStrip.strip(now, source, LEVELS_WEIGHT));
    }
    boolean zeroIsOn = now.times().closedMs() != null || now.replay() != null;
    return new StripsPicture(
        time.fromMs(),
        time.toMs(),
        ReplayPresenter.zero(now),
        zeroIsOn,
        source.firstMs(),
        source.columnMs(),
        strips,
        eventLane.events(now));
  }

  private Strip current(Snapshot now, Columns columns) {
    Double running = now.limits().runningA();
    double highest = Math.max(0, columns.highest(0));
    // The limit is drawn in as long as that does not press the trace to the bottom.
    boolean limitIn = running != null && (openTo > 0 || running < 3 * Math.max(highest, 0.02));
    double shown = Math.max(highest, openTo);
    double top = currentRange.topFor(limitIn ? Math.max(shown, running) : shown);
    LaneScale scale = LaneScale.even(-0.06 * top, top);
    List<Level> levels = new ArrayList<>();
    levels.add(Level.along(scale.place(0), "0", LevelKind.ZERO));
    String topText = numbers.amps(top).toString();
    levels.add(
        Level.along(
            1,
            running == null || limitIn
                ? topText
                : words.get("strip.limitAbove", topText, numbers.amps(running)),
            LevelKind.VALUE));
    float[] edge = Traces.nothing(columns.size());
    Double inrush = now.limits().inrushA();
    double closed = now.times().closedMs() == null ? Double.NaN : now.times().closedMs();
    double runningFrom = closed + (now.limits().inrushMs() == null ? 0 : now.limits().inrushMs());
    if (running != null) {
      if (limitIn) {
        levels.add(
            new Level(
                scale.place(running),
                words.get("strip.limit", numbers.amps(running)),
                LevelKind.LIMIT,
                runningFrom,
                Double.POSITIVE_INFINITY,
                new Limit(LimitKind.RUNNING_A, 0, running, words.get("limit.running"), scale)));
        wouldBe(now, LimitKind.RUNNING_A, 0, scale, levels);
      }
      Traces.markOutside(
          columns,
          scale,
          edge,
          Double.NEGATIVE_INFINITY,
          running,
          runningFrom,
          EventLane.openedMs(now));
    }
    if (running != null && !limitIn) {
      // Further up than the strip reaches: taken hold of at its top.
      levels.add(
          new Level(
              1,
              "",
              LevelKind.VALUE,
              Double.NEGATIVE_INFINITY,
              Double.POSITIVE_INFINITY,
              new Limit(LimitKind.RUNNING_A, 0, running, words.get("limit.running"), scale)));
    }
    if (inrush != null && inrush <= top && Double.isFinite(closed)) {
      levels.add(
          new Level(
              scale.place(inrush),
              words.get("strip.inrush", numbers.amps(inrush)),
              LevelKind.LIMIT,
              closed,
              runningFrom,
              new Limit(LimitKind.INRUSH_A, 0, inrush, words.get("limit.inrush"), scale)));
    }
    return new Strip(
        currentName(now),
        CURRENT_WEIGHT,
        List.of(),
        List.of(Traces.trace("", columns, scale, edge)),
        levels,
        source.behind(scale, Course.Quantity.SUPPLY_A));
  }

  /** Name of the strip, and what the faint line in all strips is. */
  private String currentName(Snapshot now) {
    EarlierPowerUp earlier = now.times().closedMs() == null ? null : now.beside().earlier();
    if (earlier == null) {
      return words.get("strip.current");
    }
    String which = String.valueOf(earlier.powerUp());
    return words.get(
        "strip.behind",
        words.get("strip.current"),
        words.get(earlier.knownGood() ? "strip.behind.knownGood" : "strip.behind.other", which));
  }

  /** In a replay: where the limit stands that is asked about. */
  private void wouldBe(
      Snapshot now, LimitKind kind, int rail, LaneScale scale, List<Level> levels) {
    Snapshot.WhatIf what = now.beside().whatIf();
    Double asked = what == null ? null : kind.in(what.sheet(), rail);
    if (asked != null && !asked.equals(kind.in(now.sheet(), rail))) {
      levels.add(
          Level.along(
              scale.place(asked),
              words.get("strip.whatIf", numbers.inUnit(asked, kind.unit())),
              LevelKind.LIMIT));
    }
  }
}
