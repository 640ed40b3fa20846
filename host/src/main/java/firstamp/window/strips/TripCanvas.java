package firstamp.window.strips;

import firstamp.window.present.BenchView.TripPicture;
import firstamp.window.present.BenchView.TripZero;
import firstamp.window.widgets.Canvas;
import firstamp.window.widgets.LaneScale;
import firstamp.window.widgets.Palette;
import firstamp.window.widgets.WindowTheme;
import firstamp.window.words.Numbers;
import firstamp.window.words.Words;
import java.awt.BasicStroke;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;

/** The picture of a trip: a sentence, and the current; what zero is stands at its line. */
public final class TripCanvas {
  private static final int LEFT = 16;
  private static final int TOP = 64;
  private static final int BOTTOM = 52;

  private final Palette palette;
  private final Words words;
  private final Numbers numbers;
  private final Canvas canvas;
  private TripPicture shown;

  public TripCanvas(Palette palette, Words words, Numbers numbers) {
    this.palette = palette;
    this.words = words;
    this.numbers = numbers;
    canvas = new Canvas("trip-picture", 400, 260, this::paint);
    canvas.say(words.get("trip.picture.accessible"));
  }

  public Canvas component() {
    return canvas;
  }

  public void show(TripPicture picture) {
    if (picture != null && !picture.equals(shown)) {
      shown = picture;
      canvas.say(words.get("trip.picture.accessible") + ". " + picture.sentence());
      canvas.repaint();
    }
  }

  private void paint(Graphics2D g, int width, int height) {
    g.setColor(WindowTheme.colour(palette.surface()));
    g.fillRect(0, 0, width, height);
    if (shown == null) {
      return;
    }
    sentence(g, width - 2 * LEFT);
    Rectangle2D area = new Rectangle2D.Double(LEFT, TOP, width - 2 * LEFT, height - TOP - BOTTOM);
    float highest = shown.limitA() == null ? 0 : shown.limitA().floatValue();
    for (float amps : shown.amps()) {
      highest = Math.max(highest, amps);
    }
    double top = LaneScale.roundUp(Math.max(0.02, highest * 1.1));
    double zero = x(area, 0);
    java.awt.Shape whole = g.getClip();
    g.clip(area);
    over(g, area, top);
    trace(g, area, top);
    g.setClip(whole);
    limit(g, area, top);
    if (shown.zero() != TripZero.OPEN) {
      upright(g, area, zero, words.get("trip.picture." + shown.zero().key()), false);
    }
    if (shown.offMs() != null) {
      upright(g, area, x(area, shown.offMs()), words.get("trip.picture.open"), true);
    }
    g.setColor(WindowTheme.colour(palette.edge()));
    g.setStroke(new BasicStroke(1));
    g.draw(new Line2D.Double(area.getX(), y(area, 0, top), area.getMaxX(), y(area, 0, top)));
    Font small = WindowTheme.font(false, 15);
    text(
        g,
        words.get("trip.picture.name"),
        LEFT,
        TOP + 4,
        WindowTheme.font(true, 15),
        palette.ink());
    text(g, numbers.amps(top).toString(), LEFT, TOP + 22, small, palette.quietInk());
    times(g, area, small);
  }

  /**
   * The current as it was taken: a value stands until the next one. A line drawn from value to
   * value would cross the limit before the moment at which it was seen to be crossed.
   *
   * @param lowest amps under which it does not go
   */
  private Path2D steps(Rectangle2D area, double top, double lowest) {
    Path2D line = new Path2D.Double();
    double step = shown.stepMs();
    for (int at = 0; at < shown.amps().size(); at++) {
      double from = shown.firstMs() + at * step;
      double py = y(area, Math.max(lowest, shown.amps().get(at)), top);
      if (at == 0) {
        line.moveTo(x(area, from), py);
      } else {
        line.lineTo(x(area, from), py);
      }
      line.lineTo(x(area, from + step), py);
    }
    return line;
  }

  private void trace(Graphics2D g, Rectangle2D area, double top) {
    g.setColor(WindowTheme.colour(palette.ink()));
    g.setStroke(new BasicStroke(2.2f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER));
    g.draw(steps(area, top, Double.NEGATIVE_INFINITY));
  }

  /** Fills what lies over the limit, from where it acted. */
  private void over(Graphics2D g, Rectangle2D area, double top) {
    if (shown.limitA() == null) {
      return;
    }
    Path2D over = steps(area, top, shown.limitA());
    double limit = y(area, shown.limitA(), top);
    over.lineTo(over.getCurrentPoint().getX(), limit);
    over.lineTo(x(area, shown.firstMs()), limit);
    over.closePath();
    g.setColor(WindowTheme.colour(palette.outside()));
    java.awt.Shape all = g.getClip();
    double from = x(area, 0);
    g.clip(new Rectangle2D.Double(from, area.getY(), area.getMaxX() - from, area.getHeight()));
    g.fill(over);
    g.setClip(all);
  }

  private void limit(Graphics2D g, Rectangle2D area, double top) {
    if (shown.limitA() == null) {
      return;
    }
    double at = y(area, shown.limitA(), top);
    g.setColor(WindowTheme.colour(palette.ink()));
    g.setStroke(new BasicStroke(1.6f, 0, 1, 1, new float[] {9, 4}, 0));
    g.draw(new Line2D.Double(area.getX(), at, area.getMaxX(), at));
    String label = words.get("trip.picture.limit", numbers.amps(shown.limitA()));
    Font font = WindowTheme.font(false, 15);
    int width = g.getFontMetrics(font).stringWidth(label);
    text(g, label, area.getMaxX() - width, at - 5, font, palette.ink());
  }

  private void upright(Graphics2D g, Rectangle2D area, double x, String label, boolean right) {
    g.setColor(WindowTheme.colour(palette.ink()));
    g.setStroke(new BasicStroke(1.6f));
    g.draw(new Line2D.Double(x, area.getY() + 8, x, area.getMaxY()));
    Font font = WindowTheme.font(true, 15);
    int width = g.getFontMetrics(font).stringWidth(label);
    text(
        g,
        label,
        right ? x + 6 : x - width - 6,
        area.getY() + (right ? 40 : 18),
        font,
        palette.ink());
  }

  private void times(Graphics2D g, Rectangle2D area, Font font) {
    double span = shown.toMs() - shown.fromMs();
    double step = LaneScale.roundUp(span / 9);
    for (double ms = Math.ceil(shown.fromMs() / step) * step; ms <= shown.toMs(); ms += step) {
      String label = numbers.short3(Math.abs(ms) < step / 1e6 ? 0 : ms);
      double x = x(area, ms);
      int width = g.getFontMetrics(font).stringWidth(label);
      g.setColor(WindowTheme.colour(palette.edge()));
      g.setStroke(new BasicStroke(1));
      g.draw(new Line2D.Double(x, area.getMaxY(), x, area.getMaxY() + 4));
      text(g, label, x - width / 2.0, area.getMaxY() + 19, font, palette.ink());
    }
    String axis = words.get("trip.picture.axis." + shown.zero().key());
    int width = g.getFontMetrics(font).stringWidth(axis);
    text(g, axis, area.getCenterX() - width / 2.0, area.getMaxY() + 40, font, palette.quietInk());
  }

  private double x(Rectangle2D area, double ms) {
    return area.getX() + (ms - shown.fromMs()) / (shown.toMs() - shown.fromMs()) * area.getWidth();
  }

  private static double y(Rectangle2D area, double amps, double top) {
    return area.getMaxY() - (amps + 0.04 * top) / (1.04 * top) * area.getHeight();
  }

  /** In two lines where one is too short; letters get smaller before an end is lost. */
  private void sentence(Graphics2D g, double room) {
    Font usual = WindowTheme.font(true, WindowTheme.READING_POINTS);
    String all = shown.sentence();
    int cut = all.indexOf(". ") + 1;
    if (cut == 0 || g.getFontMetrics(usual).stringWidth(all) <= room) {
      text(g, all, LEFT, 34, fitted(g, all, room), palette.ink());
      return;
    }
    String first = all.substring(0, cut);
    String second = all.substring(cut + 1);
    text(g, first, LEFT, 22, fitted(g, first, room), palette.ink());
    text(g, second, LEFT, 44, fitted(g, second, room), palette.ink());
  }

  private static Font fitted(Graphics2D g, String text, double room) {
    Font usual = WindowTheme.font(true, WindowTheme.READING_POINTS);
    int needed = g.getFontMetrics(usual).stringWidth(text);
    return needed <= room
        ? usual
        : WindowTheme.font(true, (float) (WindowTheme.READING_POINTS * room / needed));
  }

  private static void text(Graphics2D g, String text, double x, double y, Font font, int rgb) {
    g.setFont(font);
    g.setColor(WindowTheme.colour(rgb));
    g.drawString(text, (float) x, (float) y);
  }
}
