package firstamp.window.strips;

import firstamp.bench.Snapshot;
import firstamp.model.Alarm;
import firstamp.model.AlarmState;
import firstamp.window.present.BenchView;
import firstamp.window.present.Limit;
import java.util.List;

/**
 * All strips of one moment, in places from 0 to 1 and in course time; made by {@link StripMaker},
 * free of Swing.
 *
 * @param fromMs left edge, course time
 * @param toMs right edge, course time
 * @param zeroMs course time that the axis counts from
 * @param zeroIsOn whether zero is the closing of the switch, otherwise now
 * @param firstMs begin of the first column
 * @param columnMs width of a column
 * @param strips from top to bottom
 * @param events lines through all strips
 */
public record StripsPicture(
    double fromMs,
    double toMs,
    double zeroMs,
    boolean zeroIsOn,
    double firstMs,
    double columnMs,
    List<Strip> strips,
    List<BenchView.EventMark> events) {
  private static final int FIRST_RAIL = 2;

  /**
   * The current, and the one strip that tells most now: that of the first alarm, else the first
   * rail, else the volts.
   */
  StripsPicture folded(Snapshot now) {
    if (strips.size() <= 2) {
      return this;
    }
    int second = now.figures().rails().isEmpty() ? 1 : FIRST_RAIL;
    for (Alarm alarm : now.findings().alarms()) {
      if (alarm.state() != AlarmState.CLEARED) {
        second = stripOf(alarm, now);
        break;
      }
    }
    return new StripsPicture(
        fromMs,
        toMs,
        zeroMs,
        zeroIsOn,
        firstMs,
        columnMs,
        List.of(strips.get(0), strips.get(Math.min(second, strips.size() - 1))),
        events);
  }

  private int stripOf(Alarm alarm, Snapshot now) {
    for (int at = 0; at < now.figures().rails().size(); at++) {
      if (now.figures().rails().get(at).input() == alarm.rail()) {
        return FIRST_RAIL + at;
      }
    }
    boolean level = alarm.rule().equals("head-below-meter") || alarm.rule().equals("hum");
    return level ? strips.size() - 1 : 1;
  }

  /** Every limit that can be moved, from top to bottom. */
  public List<Limit> limits() {
    return strips.stream()
        .flatMap(strip -> strip.levels().stream())
        .map(Level::limit)
        .filter(limit -> limit != null)
        .toList();
  }

  /** Course time of the middle of a column. */
  public double middleMs(int column) {
    return firstMs + (column + 0.5) * columnMs;
  }

  /**
   * One strip.
   *
   * @param name written inside it
   * @param weight share of the height
   * @param bands grounds where a trace belongs
   * @param traces in it
   * @param levels lines and values on its scale
   * @param behind means of an earlier power-up, per trace
   */
  public record Strip(
      String name,
      int weight,
      List<Band> bands,
      List<Trace> traces,
      List<Level> levels,
      List<float[]> behind) {}

  /**
   * Where a trace belongs, per column or, with one entry, the same all along.
   *
   * @param low lower edge
   * @param high upper edge
   * @param name written at its right end, may be empty
   */
  record Band(float[] low, float[] high, String name) {}

  /**
   * One trace.
   *
   * @param name written at its left end, may be empty where the strip's name says it
   * @param low lowest per column, NaN = nothing
   * @param high highest
   * @param mean mean
   * @param edge where it lies outside: place of the edge it has left, NaN = inside
   */
  public record Trace(String name, float[] low, float[] high, float[] mean, float[] edge) {}

  /**
   * A line on the scale.
   *
   * @param place from 0 to 1
   * @param text value at it
   * @param kind what it means
   * @param untilMs course time at which it ends (a surge limit), infinite = goes on
   * @param fromMs course time at which it begins
   * @param limit to be moved, null = it is no limit, or one that nobody moves
   */
  record Level(
      double place, String text, LevelKind kind, double fromMs, double untilMs, Limit limit) {
    Level(double place, String text, LevelKind kind, double fromMs, double untilMs) {
      this(place, text, kind, fromMs, untilMs, null);
    }

    /** A line all along. */
    static Level along(double place, String text, LevelKind kind) {
      return new Level(place, text, kind, Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY);
    }
  }

  /** Meaning of a {@link Level}. */
  enum LevelKind {
    /** Zero of the scale. */
    ZERO,
    /** A value on the scale, no line. */
    VALUE,
    /** Edge of a window. */
    EDGE,
    /** A limit at which something happens. */
    LIMIT
  }
}
