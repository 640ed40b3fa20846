package firstamp.window.strips;

import firstamp.window.strips.StripsPicture.Level;
import firstamp.window.strips.StripsPicture.LevelKind;
import firstamp.window.widgets.WindowTheme;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.font.FontRenderContext;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;

/**
 * Words and figures of one strip, in the order of what they are worth: one that would touch another
 * or leave the strip moves a little, and is left out where there is no room. A low strip so keeps
 * its name, its limit and the edges of its window, and loses the rest.
 */
final class StripWords {
  static final Font NAME = WindowTheme.font(true, 15f);
  static final Font VALUE = WindowTheme.font(false, 15f);
  static final double PAD = 6;

  /** At the right the values of the scale stand; the words of a limit keep clear of them. */
  static final double VALUES_ROOM = 80;

  /** Between the ink of two texts, and between a text and the edge of its strip. */
  static final double GAP = 3;

  private static final double RIM = 1.5;
  private static final String BELOW_THE_LINE = "gjpqy,;()/";

  private final Graphics2D g;
  private final Rectangle2D area;
  private final int ground;
  private final double nameCap;
  private final double valueCap;
  private final List<Rectangle2D> taken = new ArrayList<>();

  StripWords(Graphics2D g, Rectangle2D area, int ground) {
    this.g = g;
    this.area = area;
    this.ground = ground;
    nameCap = capHeight(NAME, g.getFontRenderContext());
    valueCap = capHeight(VALUE, g.getFontRenderContext());
  }

  /** The name of the strip, always. */
  void name(String name, int ink) {
    put(name, NAME, area.getX() + PAD, area.getY() + GAP + 1 + nameCap, ink);
  }

  /**
   * A limit's words: above its line, else below it, else nowhere.
   *
   * @param right end of the words
   */
  void limit(String text, double right, double lineY, int ink) {
    double width = width(text, VALUE);
    double afterName = taken.isEmpty() ? area.getX() : taken.get(0).getMaxX() + 2 * PAD;
    double left = Math.max(right - width, Math.min(afterName, area.getMaxX() - width - PAD));
    double highest = area.getY() + GAP + valueCap;
    for (double base : new double[] {Math.max(lineY - 4, highest), lineY + valueCap + 4}) {
      for (double x : new double[] {right - width, left}) {
        if (offer(text, VALUE, x, base, ink)) {
          return;
        }
      }
    }
  }

  /** A value of the scale in its line at the right edge, moved by a little if that helps. */
  void value(String text, double y, int ink) {
    double x = area.getMaxX() - PAD - width(text, VALUE);
    double lowest = area.getY() + GAP + valueCap;
    double highest = area.getMaxY() - GAP;
    for (double shift : new double[] {0, 1, -1, 2, -2, 3, -3, 4, -4}) {
      double base = Math.max(lowest, Math.min(highest, y + valueCap / 2 + shift));
      if (offer(text, VALUE, x, base, ink)) {
        return;
      }
    }
  }

  /** Words beside a trace or a band, if there is room. */
  boolean beside(String text, double x, double base, int ink) {
    return offer(text, VALUE, x, base, ink);
  }

  /** How much a level is worth: limits, then the window, then zero, then the scale. */
  static int rank(Level level) {
    return switch (level.kind()) {
      case LIMIT -> 0;
      case EDGE -> 1;
      case ZERO -> 2;
      case VALUE -> 3;
    };
  }

  static boolean isLimit(Level level) {
    return level.kind() == LevelKind.LIMIT;
  }

  double width(String text, Font font) {
    return g.getFontMetrics(font).stringWidth(text);
  }

  private boolean offer(String text, Font font, double x, double base, int ink) {
    Rectangle2D box = box(text, font, x, base);
    boolean inside =
        box.getMinY() >= area.getMinY() + GAP - 0.01
            && box.getMaxY() <= area.getMaxY() - GAP + 0.01
            && box.getMaxX() <= area.getMaxX();
    for (Rectangle2D other : taken) {
      if (!inside
          || box.getMinX() < other.getMaxX() + 2 * GAP
              && other.getMinX() < box.getMaxX() + 2 * GAP
              && box.getMinY() < other.getMaxY() + GAP
              && other.getMinY() < box.getMaxY() + GAP) {
        return false;
      }
    }
    if (inside) {
      put(text, font, x, base, ink);
    }
    return inside;
  }

  private Rectangle2D box(String text, Font font, double x, double base) {
    double cap = font == NAME ? nameCap : valueCap;
    boolean hangs = text.chars().anyMatch(letter -> BELOW_THE_LINE.indexOf(letter) >= 0);
    double below = hangs ? g.getFontMetrics(font).getDescent() - 1 : 0;
    return new Rectangle2D.Double(x, base - cap, width(text, font), cap + below);
  }

  /** Text with a rim of the ground, so that a trace behind it does not eat it. */
  private void put(String text, Font font, double x, double base, int ink) {
    Rectangle2D box = box(text, font, x, base);
    taken.add(box);
    g.setPaint(WindowTheme.colour(ground));
    g.fill(
        new Rectangle2D.Double(
            box.getX() - 2, box.getY() - RIM, box.getWidth() + 4, box.getHeight() + 2 * RIM));
    g.setFont(font);
    g.setPaint(WindowTheme.colour(ink));
    g.drawString(text, (float) x, (float) base);
  }

  /** Height of a capital, which is that of a figure too. */
  static double capHeight(Font font, FontRenderContext context) {
    return font.createGlyphVector(context, "H").getVisualBounds().getHeight();
  }
}
