package firstamp.window.strips;

import firstamp.window.present.Limit;
import firstamp.window.present.LimitPresenter;
import firstamp.window.widgets.LaneScale;
import firstamp.window.widgets.Palette;
import firstamp.window.widgets.WindowTheme;
import java.awt.BasicStroke;
import java.awt.Graphics2D;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.List;

/** The lines of the limits on the strips: which one the pointer meets, and the one being moved. */
final class LimitLines {
  /** At the right a limit has its words and the scale its values. */
  private static final int WORDS_ROOM = 260;

  private static final int NEAR_POINTS = 6;

  private final Palette palette;
  private final LimitPresenter words;
  private final StripChart chart;

  LimitLines(Palette palette, LimitPresenter words, StripChart chart) {
    this.palette = palette;
    this.words = words;
    this.chart = chart;
  }

  /** The limit that is being moved: a strong line with its value. */
  void paint(Graphics2D g, Limit limit, double value, List<Limit> limits) {
    Rectangle2D area = limit == null ? null : chart.areaOf(limit);
    if (area == null) {
      return;
    }
    LaneScale scale = drawn(limit, limits).scale();
    double signed = Math.copySign(value, scale.valueAt(0.9));
    double y = StripChart.yOf(area, scale.place(signed));
    g.setColor(WindowTheme.colour(palette.focus()));
    g.setStroke(new BasicStroke(3));
    g.draw(new Line2D.Double(area.getX(), y, area.getMaxX(), y));
    g.setFont(WindowTheme.font(true, 15));
    // What the keys do stands below the strips.
    String text = words.moving(limit, value, false);
    int width = g.getFontMetrics().stringWidth(text);
    double base = y > area.getMinY() + 24 ? y - 6 : y + 18;
    // Clear of the words that the limit has anyway.
    double left =
        Math.max(
            area.getX() + StripWords.PAD,
            Math.min(area.getCenterX() - width / 2.0, area.getMaxX() - WORDS_ROOM - width));
    g.setColor(WindowTheme.colour(palette.surface()));
    g.fill(new Rectangle2D.Double(left - 4, base - 15, width + 8, 19));
    g.setColor(WindowTheme.colour(palette.ink()));
    g.drawString(text, (float) left, (float) base);
  }

  /** The limit as it is drawn now: its scale may have changed since it was taken hold of. */
  private static Limit drawn(Limit held, List<Limit> limits) {
    return limits.stream().filter(held::same).findFirst().orElse(held);
  }

  /** The limit whose line is under the pointer; null = none. */
  Limit at(double y, List<Limit> limits) {
    Limit nearest = null;
    double best = NEAR_POINTS;
    for (Limit limit : limits) {
      Rectangle2D area = chart.areaOf(limit);
      double signed = Math.copySign(limit.value(), limit.scale().valueAt(0.9));
      double distance =
          area == null ? best : Math.abs(y - StripChart.yOf(area, limit.scale().place(signed)));
      if (distance < best) {
        nearest = limit;
        best = distance;
      }
    }
    return nearest;
  }
}
