package firstamp.window.strips;

import firstamp.bench.Snapshot;
import firstamp.model.Alarm;
import firstamp.model.Happening;
import firstamp.model.JobSheet;
import firstamp.model.LimitKind;
import firstamp.study.EarlierPowerUp;
import firstamp.trend.Course;
import firstamp.window.present.BenchView.EventMark;
import firstamp.window.present.Limit;
import firstamp.window.present.ReplayPresenter;
import firstamp.window.present.SentencePresenter;
import firstamp.window.strips.StripsPicture.Band;
import firstamp.window.strips.StripsPicture.Level;
import firstamp.window.strips.StripsPicture.LevelKind;
import firstamp.window.strips.StripsPicture.Strip;
import firstamp.window.strips.StripsPicture.Trace;
import firstamp.window.widgets.Columns;
import firstamp.window.widgets.LaneScale;
import firstamp.window.widgets.Tone;
import firstamp.window.words.Numbers;
import firstamp.window.words.Words;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Makes the strips out of a snapshot and the stretch of time shown. Mutable, one thread. */
public final class StripMaker {
  private static final int CURRENT_WEIGHT = 26;
  private static final int VOLTS_WEIGHT = 14;
  private static final int LEVELS_WEIGHT = 22;

  private final Words words;
  private final Numbers numbers;
  private final SteadyRange currentRange = new SteadyRange(0.02);
  private final LevelsStrip levelsStrip;
  private final ColumnsSource source = new ColumnsSource();
  private double openTo;

  public StripMaker(Words words, Numbers numbers) {
    this.words = words;
    this.numbers = numbers;
    this.levelsStrip = new LevelsStrip(words, numbers);
  }

  /** The scale of current opens to here, for a limit that is held; 0 = as the trace needs it. */
  void openTo(double amps) {
    openTo = amps;
  }

  public StripsPicture picture(Snapshot now, TimeView time, int pixels) {
    source.begin(now, time, pixels);
    List<Strip> strips = new ArrayList<>();
    strips.add(current(now, source.of(Course.Quantity.SUPPLY_A)));
    double judgedFrom = now.closedMs() == null ? Double.POSITIVE_INFINITY : now.closedMs() + 500;
    strips.add(
        volts(
            new Volts(
                words.get("strip.volts"),
                Course.Quantity.SUPPLY_V,
                now.limits().lowV(),
                now.limits().highV(),
                judgedFrom,
                openedMs(now),
                limit(now, LimitKind.SUPPLY_MAX_V, 0))));
    for (Snapshot.Rail rail : now.rails()) {
      strips.add(rail(now, rail));
    }
    JobSheet.Levels levels = now.sheet().levels();
    if (levels != null) {
      strips.add(levelsStrip.strip(now, source, LEVELS_WEIGHT));
    }
    boolean zeroIsOn = now.closedMs() != null || now.replay() != null;
    return new StripsPicture(
        time.fromMs(),
        time.toMs(),
        ReplayPresenter.zero(now),
        zeroIsOn,
        source.firstMs(),
        source.columnMs(),
        strips,
        events(now));
  }

  /** A limit that can be moved now: the probe's own; in a replay to ask what it would have done. */
  private Double limit(Snapshot now, LimitKind kind, int rail) {
    boolean movable = now.phase() != Snapshot.Phase.CONNECTING;
    return movable ? kind.in(now.sheet(), rail) : null;
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
    float[] edge = nothing(columns.size());
    Double inrush = now.limits().inrushA();
    double closed = now.closedMs() == null ? Double.NaN : now.closedMs();
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
      markOutside(
          columns, scale, edge, Double.NEGATIVE_INFINITY, running, runningFrom, openedMs(now));
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
        List.of(trace("", columns, scale, edge)),
        levels,
        source.behind(scale, Course.Quantity.SUPPLY_A));
  }

  /** Name of the strip, and what the faint line in all strips is. */
  private String currentName(Snapshot now) {
    EarlierPowerUp earlier = now.closedMs() == null ? null : now.beside().earlier();
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

  private Strip rail(Snapshot now, Snapshot.Rail rail) {
    JobSheet.Rail onSheet = now.sheet().rail(rail.input());
    double settleMs = onSheet == null || onSheet.settleMs() == null ? 500 : onSheet.settleMs();
    double from = now.closedMs() == null ? Double.POSITIVE_INFINITY : now.closedMs() + settleMs;
    return volts(
        new Volts(
            words.get("strip.rail", rail.name(), rail.input()),
            Course.Quantity.ofRail(rail.input()),
            rail.lowV(),
            rail.highV(),
            from,
            openedMs(now),
            limit(now, LimitKind.RAIL_OVER_V, rail.input())));
  }

  /** A strip of volts to be made; {@code overV} is the magnitude at which the probe acts. */
  private record Volts(
      String name,
      Course.Quantity quantity,
      Double lowV,
      Double highV,
      double judgedFrom,
      double judgedTo,
      Double overV) {
    int rail() {
      return switch (quantity) {
        case RAIL1_V -> 1;
        case RAIL2_V -> 2;
        case RAIL3_V -> 3;
        default -> 0;
      };
    }
  }

  private Strip volts(Volts v) {
    Double lowV = v.lowV;
    Double highV = v.highV;
    Columns columns = source.of(v.quantity);
    List<Level> levels = new ArrayList<>();
    List<Band> bands = new ArrayList<>();
    float[] edge = nothing(columns.size());
    LaneScale scale;
    if (lowV != null && highV != null && lowV * highV > 0) {
      scale = LaneScale.around(lowV, highV);
      levels.add(Level.along(scale.place(lowV), numbers.volts(lowV).toString(), LevelKind.EDGE));
      levels.add(Level.along(scale.place(highV), numbers.volts(highV).toString(), LevelKind.EDGE));
      double low = Math.min(scale.place(lowV), scale.place(highV));
      double high = Math.max(scale.place(lowV), scale.place(highV));
      bands.add(new Band(new float[] {(float) low}, new float[] {(float) high}, ""));
      markOutside(
          columns,
          scale,
          edge,
          Math.min(lowV, highV),
          Math.max(lowV, highV),
          v.judgedFrom,
          v.judgedTo);
    } else {
      double top = LaneScale.roundUp(Math.max(1, columns.highest(0) * 1.1));
      double bottom = Math.min(-0.06 * top, columns.lowest(0) * 1.1);
      scale = LaneScale.even(bottom, top);
      levels.add(Level.along(1, numbers.volts(top).toString(), LevelKind.VALUE));
    }
    levels.add(Level.along(scale.place(0), "0", LevelKind.ZERO));
    overVolts(v, scale, levels);
    return new Strip(
        v.name,
        VOLTS_WEIGHT,
        bands,
        List.of(trace("", columns, scale, edge)),
        levels,
        source.behind(scale, v.quantity));
  }

  /** The line at which the probe switches off; at the edge of the window it takes its place. */
  private void overVolts(Volts v, LaneScale scale, List<Level> levels) {
    if (v.overV == null) {
      return;
    }
    boolean negative = v.lowV != null && v.highV != null && v.lowV + v.highV < 0;
    double signed = negative ? -v.overV : v.overV;
    boolean edge = v.highV != null && Math.abs(signed - v.highV) < 1e-9;
    LimitKind kind = v.rail() == 0 ? LimitKind.SUPPLY_MAX_V : LimitKind.RAIL_OVER_V;
    String name =
        v.rail() == 0 ? words.get("limit.supply") : words.get("limit.rail", shortName(v.name));
    levels.add(
        new Level(
            scale.place(signed),
            edge ? "" : words.get("strip.offAbove", numbers.volts(signed)),
            LevelKind.LIMIT,
            Double.NEGATIVE_INFINITY,
            Double.POSITIVE_INFINITY,
            new Limit(kind, v.rail(), v.overV, name, scale)));
  }

  private static String shortName(String stripName) {
    int bracket = stripName.indexOf(" (");
    return bracket < 0 ? stripName : stripName.substring(0, bracket);
  }

  /** Course time at which the switch opened, infinite while it is closed. */
  static double openedMs(Snapshot now) {
    return now.phase() == Snapshot.Phase.ON || now.closedMs() == null || now.elapsedMs() == null
        ? Double.POSITIVE_INFINITY
        : now.closedMs() + now.elapsedMs();
  }

  private static void markOutside(
      Columns columns,
      LaneScale scale,
      float[] edge,
      double low,
      double high,
      double fromMs,
      double toMs) {
    for (int column = 0; column < columns.size(); column++) {
      double end = columns.firstMs() + (column + 1) * columns.columnMs();
      if (end <= fromMs || end > toMs + columns.columnMs()) {
        continue;
      }
      if (columns.high()[column] > high) {
        edge[column] = (float) scale.place(high);
      } else if (columns.low()[column] < low) {
        edge[column] = (float) scale.place(low);
      }
    }
  }

  static float[] nothing(int size) {
    float[] none = new float[size];
    java.util.Arrays.fill(none, Float.NaN);
    return none;
  }

  static Trace trace(String name, Columns columns, LaneScale scale, float[] edge) {
    int size = columns.size();
    float[] low = new float[size];
    float[] high = new float[size];
    float[] mean = new float[size];
    for (int column = 0; column < size; column++) {
      // A negative rail turns its scale over: lowest may stand above highest.
      float one = (float) scale.place(columns.low()[column]);
      float other = (float) scale.place(columns.high()[column]);
      low[column] = Math.min(one, other);
      high[column] = Math.max(one, other);
      mean[column] = (float) scale.place(columns.mean()[column]);
    }
    return new Trace(name, low, high, mean, edge);
  }

  private String eventName(Alarm alarm) {
    String cause = words.getOr("rule." + alarm.rule(), alarm.rule());
    boolean named = alarm.railName() != null && !alarm.railName().isBlank();
    return named ? words.get("rule.onRail", alarm.railName(), cause) : cause;
  }

  /** What was done to the set, in a few words; null = it is shown elsewhere (steps, the search). */
  private String happened(Happening what) {
    if (what instanceof Happening.Recording || what instanceof Happening.ModeSet) {
      String id = what instanceof Happening.ModeSet set ? "mode." + set.mode().id() : what.kind();
      return words.get("event." + id);
    }
    if (what instanceof Happening.SetChanged || what instanceof Happening.LoadStarted) {
      String text = what.words();
      return text.isBlank()
          ? words.get("event." + what.kind())
          : words.get("event." + what.kind() + ".said", text);
    }
    return null;
  }

  private List<EventMark> events(Snapshot now) {
    List<EventMark> events = new ArrayList<>();
    if (now.closedMs() != null) {
      double closed = now.closedMs();
      events.add(new EventMark(closed, words.get("event.on"), Tone.PLAIN));
      double opened = openedMs(now);
      if (Double.isFinite(opened)) {
        boolean tripped = SentencePresenter.hasTripped(now) && now.trip() != null;
        events.add(
            new EventMark(
                opened,
                words.get(tripped ? "event.trip" : "event.off"),
                tripped ? Tone.ALARM : Tone.PLAIN));
      }
      for (Alarm alarm : now.alarms()) {
        if (alarm.foldedUnder() == 0 && alarm.atMs() < opened - closed) {
          events.add(
              new EventMark(
                  closed + alarm.sinceMs(),
                  eventName(alarm),
                  SentencePresenter.toneOf(alarm.priority())));
        }
      }
    }
    int number = 0;
    for (Snapshot.Mark mark : now.marks()) {
      number++;
      String text =
          mark.text() == null || mark.text().isBlank()
              ? words.get("event.here", number)
              : mark.text();
      events.add(new EventMark(mark.ms(), text, Tone.PLAIN));
    }
    for (Snapshot.Said said : now.beside().said()) {
      String text = happened(said.what());
      if (text != null) {
        events.add(new EventMark(said.ms(), text, Tone.PLAIN));
      }
    }
    events.sort(Comparator.comparingDouble(EventMark::ms));
    return events;
  }
}
