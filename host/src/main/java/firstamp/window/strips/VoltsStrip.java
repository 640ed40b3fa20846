package firstamp.window.strips;

import firstamp.bench.Snapshot;
import firstamp.model.JobSheet;
import firstamp.model.LimitKind;
import firstamp.trend.Course;
import firstamp.window.present.Limit;
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

/** Makes the strips of volts: the supply's and the rails', with window and limit. */
final class VoltsStrip {
  private static final int WEIGHT = 14;

  private final Words words;
  private final Numbers numbers;
  private final ColumnsSource source;

  VoltsStrip(Words words, Numbers numbers, ColumnsSource source) {
    this.words = words;
    this.numbers = numbers;
    this.source = source;
  }

  Strip supply(Snapshot now) {
    double judgedFrom =
        now.times().closedMs() == null ? Double.POSITIVE_INFINITY : now.times().closedMs() + 500;
    return volts(
        new Volts(
            words.get("strip.volts"),
            Course.Quantity.SUPPLY_V,
            now.limits().lowV(),
            now.limits().highV(),
            judgedFrom,
            EventLane.openedMs(now),
            limit(now, LimitKind.SUPPLY_MAX_V, 0)));
  }

  Strip rail(Snapshot now, Snapshot.Rail rail) {
    JobSheet.Rail onSheet = now.sheet().rail(rail.input());
    double settleMs = onSheet == null || onSheet.settleMs() == null ? 500 : onSheet.settleMs();
    double from =
        now.times().closedMs() == null
            ? Double.POSITIVE_INFINITY
            : now.times().closedMs() + settleMs;
    return volts(
        new Volts(
            words.get("strip.rail", rail.name(), rail.input()),
            Course.Quantity.ofRail(rail.input()),
            rail.lowV(),
            rail.highV(),
            from,
            EventLane.openedMs(now),
            limit(now, LimitKind.RAIL_OVER_V, rail.input())));
  }

  /** A limit that can be moved now: the probe's own; in a replay to ask what it would have done. */
  private Double limit(Snapshot now, LimitKind kind, int rail) {
    boolean movable = now.phase() != Snapshot.Phase.CONNECTING;
    return movable ? kind.in(now.sheet(), rail) : null;
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
    float[] edge = Traces.nothing(columns.size());
    LaneScale scale;
    if (lowV != null && highV != null && lowV * highV > 0) {
      scale = LaneScale.around(lowV, highV);
      levels.add(Level.along(scale.place(lowV), numbers.volts(lowV).toString(), LevelKind.EDGE));
      levels.add(Level.along(scale.place(highV), numbers.volts(highV).toString(), LevelKind.EDGE));
      double low = Math.min(scale.place(lowV), scale.place(highV));
      double high = Math.max(scale.place(lowV), scale.place(highV));
      bands.add(new Band(new float[] {(float) low}, new float[] {(float) high}, ""));
      Traces.markOutside(
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
        WEIGHT,
        bands,
        List.of(Traces.trace("", columns, scale, edge)),
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
}
