package firstamp.window.strips;

import firstamp.bench.LookScale;
import firstamp.bench.Snapshot;
import firstamp.model.JobSheet;
import firstamp.model.limits.Coverage;
import firstamp.trend.Course;
import firstamp.window.strips.StripsPicture.Band;
import firstamp.window.strips.StripsPicture.Level;
import firstamp.window.strips.StripsPicture.LevelKind;
import firstamp.window.strips.StripsPicture.Strip;
import firstamp.window.widgets.Columns;
import firstamp.window.widgets.LaneScale;
import firstamp.window.words.Numbers;
import firstamp.window.words.Words;
import java.util.ArrayList;
import java.util.List;

/** The strip of meter and head, with the place where the head belongs below the meter. */
final class LevelsStrip {
  private static final double STEP_DB = 20;

  /** For the names above the traces. */
  private static final double HEADROOM_DB = 12;

  private final Words words;
  private final Numbers numbers;

  LevelsStrip(Words words, Numbers numbers) {
    this.words = words;
    this.numbers = numbers;
  }

  Strip strip(Snapshot now, ColumnsSource columns, int weight) {
    JobSheet.Levels levels = now.sheet().levels();
    Columns meter = columns.of(Course.Quantity.METER_DBV);
    Columns head = columns.of(Course.Quantity.HEAD_DBV);
    double top =
        STEP_DB
            * Math.ceil((Math.max(meter.highest(-20), head.highest(-20)) + HEADROOM_DB) / STEP_DB);
    double bottom =
        Math.min(
            top - 4 * STEP_DB,
            STEP_DB * Math.floor((Math.min(head.lowest(-60), meter.lowest(-60)) - 2) / STEP_DB));
    bottom = Math.max(bottom, top - 7 * STEP_DB);
    LaneScale scale = LaneScale.even(bottom, top);
    List<Level> lines = new ArrayList<>();
    for (double at = top - STEP_DB; at > bottom + 1; at -= 2 * STEP_DB) {
      lines.add(Level.along(scale.place(at), numbers.fixed(at, 0) + " dBV", LevelKind.VALUE));
    }
    float[] edge = Traces.nothing(head.size());
    List<Band> bands = new ArrayList<>();
    boolean headOff = Coverage.says(now.findings().notWatched(), Coverage.HEAD_CLIP_OFF);
    if (levels.expectedDb() != null && !headOff) {
      bands.add(expected(now, levels, meter, head, scale, edge));
    }
    List<StripsPicture.Trace> traces = new ArrayList<>();
    traces.add(Traces.trace(words.get("strip.meter"), meter, scale, Traces.nothing(meter.size())));
    if (!headOff) {
      // Of a clip that is joined to nothing the input shows its own noise.
      traces.add(Traces.trace(words.get("strip.head"), head, scale, edge));
    }
    return new Strip(
        words.get(LookScale.levelsUncalibrated(now) ? "strip.levelsUncalibrated" : "strip.levels"),
        weight,
        bands,
        traces,
        lines,
        columns.behind(scale, Course.Quantity.METER_DBV, Course.Quantity.HEAD_DBV));
  }

  /** The band follows the meter; where the meter shows no signal there is none. */
  private Band expected(
      Snapshot now,
      JobSheet.Levels levels,
      Columns meter,
      Columns head,
      LaneScale scale,
      float[] edge) {
    double margin = levels.marginDb() == null ? 6 : levels.marginDb();
    double signal = levels.meterSignalDbv() == null ? -60 : levels.meterSignalDbv();
    double fromMs =
        now.times().closedMs() == null
            ? Double.POSITIVE_INFINITY
            : now.times().closedMs() + (levels.fromMs() == null ? 1500 : levels.fromMs());
    int size = meter.size();
    float[] low = Traces.nothing(size);
    float[] high = Traces.nothing(size);
    for (int column = 0; column < size; column++) {
      double level = meter.mean()[column];
      if (!(level >= signal) || meter.middleMs(column) < fromMs) {
        continue;
      }
      double lowest = level - levels.expectedDb() - margin;
      low[column] = (float) scale.place(lowest);
      high[column] = (float) scale.place(level - levels.expectedDb() + margin);
      if (head.mean()[column] < lowest && meter.middleMs(column) < EventLane.openedMs(now)) {
        edge[column] = low[column];
      }
    }
    return new Band(low, high, words.get("strip.expected"));
  }
}
