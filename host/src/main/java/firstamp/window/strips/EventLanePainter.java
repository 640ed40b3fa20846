package firstamp.window.strips;

import firstamp.window.present.BenchView.EventMark;
import firstamp.window.widgets.Palette;
import firstamp.window.widgets.Shapes;
import firstamp.window.widgets.Tone;
import firstamp.window.widgets.WindowTheme;
import java.awt.BasicStroke;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;

/** Paints the lane of events above the strips. */
final class EventLanePainter {
  static final int HEIGHT = 24;

  private final Palette palette;
  private final StripChart chart;

  EventLanePainter(Palette palette, StripChart chart) {
    this.palette = palette;
    this.chart = chart;
  }

  void paint(Graphics2D g, int width, List<EventMark> events) {
    Font font = WindowTheme.font(true, 15);
    g.setFont(font);
    for (EventMark event : events) {
      if (inSight(event)) {
        double x = chart.xOf(event.ms());
        g.setColor(WindowTheme.colour(palette.ink()));
        g.setStroke(new BasicStroke(1.4f));
        g.draw(new Line2D.Double(x, 4, x, HEIGHT + 1));
      }
    }
    List<double[]> taken = new ArrayList<>();
    for (boolean states : new boolean[] {true, false}) {
      for (EventMark event : events) {
        if (inSight(event) && states == hasState(event)) {
          label(g, event, width, taken);
        }
      }
    }
  }

  private boolean inSight(EventMark event) {
    double x = chart.xOf(event.ms());
    return x >= chart.dataArea().getX() - 1 && x <= chart.dataArea().getMaxX() + 1;
  }

  private static boolean hasState(EventMark event) {
    return event.tone() == Tone.ALARM || event.tone() == Tone.CAUTION;
  }

  /** Words of an event, unless others already stand there; alarms come first. */
  private void label(Graphics2D g, EventMark event, int width, List<double[]> taken) {
    int whole = g.getFontMetrics().stringWidth(event.text()) + (hasState(event) ? 30 : 12);
    double x = chart.xOf(event.ms());
    double at = x + whole > width ? x - whole : x + 4;
    for (double[] other : taken) {
      if (at < other[1] && at + whole > other[0]) {
        return;
      }
    }
    taken.add(new double[] {at, at + whole});
    boolean state = hasState(event);
    g.setColor(WindowTheme.colour(state ? palette.groundOf(event.tone()) : palette.ground()));
    g.fill(new Rectangle2D.Double(at - 1, 3, whole - 2, 19));
    g.setColor(WindowTheme.colour(state ? palette.inkOn(event.tone()) : palette.ink()));
    if (state) {
      Shapes.draw(g, event.tone(), at + 4, 6, 12);
    }
    g.drawString(event.text(), (float) at + (state ? 21 : 2), 17);
  }
}
