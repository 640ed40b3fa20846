package firstamp.window;

import firstamp.model.Alarm;
import firstamp.model.JobSheet;
import firstamp.session.Course;
import firstamp.session.Snapshot;
import firstamp.window.BenchView.EventMark;
import firstamp.window.StripsPicture.Band;
import firstamp.window.StripsPicture.Level;
import firstamp.window.StripsPicture.LevelKind;
import firstamp.window.StripsPicture.Strip;
import firstamp.window.StripsPicture.Trace;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Makes the strips out of a snapshot and the stretch of time shown. Mutable, one thread. */
final class StripMaker {
  private static final int CURRENT_WEIGHT = 26;
  private static final int VOLTS_WEIGHT = 14;
  private static final int LEVELS_WEIGHT = 22;

  private final Words words;
  private final Numbers numbers;
  private final SteadyRange currentRange = new SteadyRange(0.02);
  private final LevelsStrip levelsStrip;

  StripMaker(Words words, Numbers numbers) {
    this.words = words;
    this.numbers = numbers;
    this.levelsStrip = new LevelsStrip(words, numbers);
  }

  StripsPicture picture(Snapshot now, TimeView time, int pixels) {
    List<Strip> strips = new ArrayList<>();
    Columns current = Columns.of(now.course(), Course.Quantity.SUPPLY_A, time, now.nowMs(), pixels);
    strips.add(current(now, current));
    Columns volts = Columns.of(now.course(), Course.Quantity.SUPPLY_V, time, now.nowMs(), pixels);
    double judgedFrom = now.closedMs() == null ? Double.POSITIVE_INFINITY : now.closedMs() + 500;
    strips.add(
        volts(
            words.get("strip.volts"),
            volts,
            now.limits().lowV(),
            now.limits().highV(),
            judgedFrom,
            openedMs(now)));
    for (Snapshot.Rail rail : now.rails()) {
      strips.add(rail(now, rail, time, pixels));
    }
    JobSheet.Levels levels = now.sheet().levels();
    if (levels != null) {
      strips.add(levelsStrip.strip(now, time, pixels, LEVELS_WEIGHT));
    }
    boolean zeroIsOn = now.closedMs() != null || now.replay() != null;
    return new StripsPicture(
        time.fromMs(),
        time.toMs(),
        ReplayPresenter.zero(now),
        zeroIsOn,
        current.firstMs(),
        current.columnMs(),
        strips,
        events(now));
  }

  private Strip current(Snapshot now, Columns columns) {
    Double running = now.limits().runningA();
    double highest = Math.max(0, columns.highest(0));
    // The limit is drawn in as long as that does not press the trace to the bottom.
    boolean limitIn = running != null && running < 3 * Math.max(highest, 0.02);
    double top = currentRange.topFor(limitIn ? Math.max(highest, running) : highest);
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
                Double.POSITIVE_INFINITY));
      }
      markOutside(
          columns, scale, edge, Double.NEGATIVE_INFINITY, running, runningFrom, openedMs(now));
    }
    if (inrush != null && inrush <= top && Double.isFinite(closed)) {
      levels.add(
          new Level(
              scale.place(inrush),
              words.get("strip.inrush", numbers.amps(inrush)),
              LevelKind.LIMIT,
              closed,
              runningFrom));
    }
    return new Strip(
        words.get("strip.current"),
        CURRENT_WEIGHT,
        List.of(),
        List.of(trace("", columns, scale, edge)),
        levels);
  }

  private Strip rail(Snapshot now, Snapshot.Rail rail, TimeView time, int pixels) {
    Columns columns =
        Columns.of(now.course(), Course.Quantity.ofRail(rail.input()), time, now.nowMs(), pixels);
    JobSheet.Rail onSheet = now.sheet().rail(rail.input());
    double settleMs = onSheet == null || onSheet.settleMs() == null ? 500 : onSheet.settleMs();
    double from = now.closedMs() == null ? Double.POSITIVE_INFINITY : now.closedMs() + settleMs;
    return volts(
        words.get("strip.rail", rail.name(), rail.input()),
        columns,
        rail.lowV(),
        rail.highV(),
        from,
        openedMs(now));
  }

  private Strip volts(
      String name, Columns columns, Double lowV, Double highV, double judgedFrom, double judgedTo) {
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
          columns, scale, edge, Math.min(lowV, highV), Math.max(lowV, highV), judgedFrom, judgedTo);
    } else {
      double top = LaneScale.roundUp(Math.max(1, columns.highest(0) * 1.1));
      double bottom = Math.min(-0.06 * top, columns.lowest(0) * 1.1);
      scale = LaneScale.even(bottom, top);
      levels.add(Level.along(1, numbers.volts(top).toString(), LevelKind.VALUE));
    }
    levels.add(Level.along(scale.place(0), "0", LevelKind.ZERO));
    return new Strip(name, VOLTS_WEIGHT, bands, List.of(trace("", columns, scale, edge)), levels);
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
                  words.getOr("rule." + alarm.rule(), alarm.rule()),
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
    events.sort(Comparator.comparingDouble(EventMark::ms));
    return events;
  }
}
