package firstamp.window.strips;

import firstamp.window.widgets.Palette;
import firstamp.window.widgets.WindowTheme;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;

/** Paints the line of the pointer through all strips, and the stretch that is dragged out. */
final class PointerPainter {
  private final Palette palette;
  private final StripChart chart;

  PointerPainter(Palette palette, StripChart chart) {
    this.palette = palette;
    this.chart = chart;
  }

  void paint(Graphics2D g, Double fromMs, Double atMs) {
    if (atMs == null) {
      return;
    }
    Rectangle2D area = chart.dataArea();
    double x = chart.xOf(atMs);
    g.setColor(WindowTheme.colour(palette.ink()));
    g.setStroke(new BasicStroke(1, 0, 1, 1, new float[] {3, 3}, 0));
    g.draw(new Line2D.Double(x, area.getMinY(), x, area.getMaxY()));
    if (fromMs != null) {
      double from = chart.xOf(fromMs);
      Color soft = WindowTheme.colour(palette.focus());
      g.setColor(new Color(soft.getRed(), soft.getGreen(), soft.getBlue(), 46));
      g.fill(
          new Rectangle2D.Double(
              Math.min(from, x), area.getMinY(), Math.abs(x - from), area.getHeight()));
    }
  }
}
