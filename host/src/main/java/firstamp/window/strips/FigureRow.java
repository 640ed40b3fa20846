package firstamp.window.strips;

import firstamp.window.present.BenchView.FigureView;
import firstamp.window.widgets.Canvas;
import firstamp.window.widgets.Palette;
import firstamp.window.widgets.Shapes;
import firstamp.window.widgets.Tone;
import firstamp.window.widgets.WindowTheme;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.GridLayout;
import java.util.ArrayList;
import java.util.List;
import javax.swing.JComponent;
import javax.swing.JPanel;

/** The row of large figures; readable from two metres. */
public final class FigureRow {
  public static final int HEIGHT = 132;
  static final int FOLDED_HEIGHT = 58;
  private static final float FOLDED_POINTS = 27;
  private static final int LEAST_WIDTH = 150;
  private static final float NUMBER_POINTS = 54;
  private static final int SIDE = 10;

  private final Palette palette;
  private final JPanel row = new JPanel(new GridLayout(1, 0, 8, 0));
  private final List<Canvas> cells = new ArrayList<>();
  private List<FigureView> shown = List.of();
  private boolean folded;

  public FigureRow(Palette palette) {
    this.palette = palette;
    row.setName("figures");
    row.setOpaque(false);
  }

  public JComponent component() {
    return row;
  }

  public void show(List<FigureView> figures) {
    if (figures.size() != cells.size()) {
      row.removeAll();
      cells.clear();
      for (int at = 0; at < figures.size(); at++) {
        int index = at;
        Canvas cell =
            new Canvas(
                "figure-" + at,
                LEAST_WIDTH,
                height(),
                (g, width, height) -> paint(g, width, height, shown.get(index)));
        cells.add(cell);
        row.add(cell);
      }
      row.revalidate();
      // The gaps lie elsewhere now: what was painted there must go too.
      row.repaint();
    }
    List<FigureView> before = shown;
    shown = List.copyOf(figures);
    for (int at = 0; at < cells.size(); at++) {
      if (before.size() != shown.size() || !before.get(at).equals(shown.get(at))) {
        cells.get(at).say(shown.get(at).spoken());
        cells.get(at).repaint();
      }
    }
  }

  private int height() {
    return folded ? FOLDED_HEIGHT : HEIGHT;
  }

  /** Name, number and state alone where the room is small. */
  public void fold(boolean small) {
    if (small != folded) {
      folded = small;
      List<FigureView> now = shown;
      row.removeAll();
      cells.clear();
      shown = List.of();
      show(now);
    }
  }

  private void paint(Graphics2D g, int width, int height, FigureView view) {
    if (folded) {
      small(g, width, height, view);
      return;
    }
    g.setColor(WindowTheme.colour(palette.groundOf(view.tone())));
    g.fillRect(0, 0, width, height);
    int ink = palette.inkOn(view.tone());
    int quiet = view.tone() == Tone.PLAIN ? palette.quietInk() : ink;
    int room = width - 2 * SIDE;
    text(g, view.name(), SIDE, 20, WindowTheme.font(true, 15), quiet, room);
    Font large = WindowTheme.font(true, NUMBER_POINTS);
    Font unit = WindowTheme.font(true, 24);
    int numberWidth = g.getFontMetrics(large).stringWidth(view.number());
    int unitWidth = g.getFontMetrics(unit).stringWidth(view.unit()) + 6;
    // A long number keeps its size, and its unit goes up beside the name.
    boolean above = numberWidth + unitWidth > room;
    text(g, view.number(), SIDE, 69, large, ink, room);
    text(
        g,
        view.unit(),
        above ? width - SIDE - unitWidth + 6 : SIDE + 6 + numberWidth,
        above ? 22 : 69,
        unit,
        ink,
        room);
    int shape = view.tone() == Tone.PLAIN ? 0 : 16;
    if (shape > 0) {
      g.setColor(WindowTheme.colour(ink));
      Shapes.draw(g, view.tone(), SIDE, 78, shape);
    }
    text(
        g,
        view.word(),
        SIDE + (shape > 0 ? shape + 7 : 0),
        93,
        WindowTheme.font(true, 18),
        ink,
        room - (shape > 0 ? shape + 7 : 0));
    more(g, view.more(), quiet, room);
  }

  private void small(Graphics2D g, int width, int height, FigureView view) {
    g.setColor(WindowTheme.colour(palette.groundOf(view.tone())));
    g.fillRect(0, 0, width, height);
    int ink = palette.inkOn(view.tone());
    int room = width - 2 * SIDE;
    boolean plain = view.tone() == Tone.PLAIN;
    String above = plain ? view.name() : view.word();
    Font number = WindowTheme.font(true, FOLDED_POINTS);
    text(g, above, SIDE, 19, WindowTheme.font(true, 15), plain ? palette.quietInk() : ink, room);
    text(g, view.number() + " " + view.unit(), SIDE, 48, number, ink, room);
  }

  /** In two lines what is too long for one. */
  private static void more(Graphics2D g, String more, int rgb, int room) {
    Font font = WindowTheme.font(false, WindowTheme.LEAST_POINTS);
    int comma = more.indexOf(", ");
    if (g.getFontMetrics(font).stringWidth(more) <= room || comma < 0) {
      text(g, more, SIDE, 118, font, rgb, room);
    } else {
      text(g, more.substring(0, comma), SIDE, 110, font, rgb, room);
      text(g, more.substring(comma + 2), SIDE, 127, font, rgb, room);
    }
  }

  /** Text that shrinks before it would be cut off. */
  private static void text(Graphics2D g, String text, int x, int y, Font font, int rgb, int room) {
    int width = g.getFontMetrics(font).stringWidth(text);
    g.setFont(width <= room ? font : font.deriveFont(font.getSize2D() * room / width));
    g.setColor(WindowTheme.colour(rgb));
    g.drawString(text, x, y);
  }
}
