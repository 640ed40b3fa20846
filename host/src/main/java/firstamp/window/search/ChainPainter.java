package firstamp.window.search;

import firstamp.window.widgets.Palette;
import firstamp.window.widgets.Shapes;
import firstamp.window.widgets.Tone;
import firstamp.window.widgets.WindowTheme;
import java.awt.BasicStroke;
import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.geom.Path2D;
import java.awt.geom.RoundRectangle2D;
import java.util.ArrayList;
import java.util.List;

/** Draws a signal path with its levels: boxes for points, lines for joints, in one ink. */
final class ChainPainter {
  private static final int HIGH = 78;
  private static final int LINE = 26;

  private final Palette palette;

  ChainPainter(Palette palette) {
    this.palette = palette;
  }

  void paint(Graphics2D g, int width, int height, SearchView view) {
    g.setColor(WindowTheme.colour(palette.surface()));
    g.fillRect(0, 0, width, height);
    if (view == null || view.boxes().isEmpty()) {
      return;
    }
    Grid grid = new Grid(width, height, view.columns(), view.rows());
    for (SearchView.Line line : view.lines()) {
      line(g, grid, view.boxes().get(line.from()), view.boxes().get(line.to()), line.suspect());
    }
    for (SearchView.Box box : view.boxes()) {
      box(g, grid, box);
    }
  }

  /** Cells of the drawing. */
  private record Grid(int width, int height, int columns, int rows) {
    double cellWide() {
      return width / (double) columns;
    }

    double cellHigh() {
      return Math.min(HIGH + 70, height / (double) rows);
    }

    double boxWide() {
      return Math.min(190, cellWide() - 2 * LINE + 16);
    }

    double boxHigh() {
      return Math.min(HIGH, cellHigh() - 14);
    }

    double x(SearchView.Box box) {
      return (box.column() + 0.5) * cellWide();
    }

    double y(SearchView.Box box) {
      double top = (height - rows * cellHigh()) / 2;
      return Math.max(0, top) + (box.row() + 0.5) * cellHigh();
    }
  }

  private void line(
      Graphics2D g, Grid grid, SearchView.Box from, SearchView.Box to, boolean suspect) {
    g.setColor(WindowTheme.colour(palette.ink()));
    g.setStroke(
        suspect
            ? new BasicStroke(
                3, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 1, new float[] {7, 5}, 0)
            : new BasicStroke(2));
    double half = grid.boxWide() / 2;
    double x1 = grid.x(from) + half;
    double y1 = grid.y(from);
    double x2 = grid.x(to) - half;
    double y2 = grid.y(to);
    Path2D path = new Path2D.Double();
    path.moveTo(x1, y1);
    double bend;
    double by;
    double markY = y2;
    if (x2 > x1) {
      bend = x1 + Math.min(LINE / 2.0, (x2 - x1) / 2);
      path.lineTo(bend, y1);
      path.lineTo(bend, y2);
      path.lineTo(x2, y2);
      by = y1 == y2 ? (x1 + x2) / 2 : (bend + x2) / 2;
    } else {
      // Into the next band: down, back to the left, and on.
      double between = y2 - grid.cellHigh() / 2;
      bend = x1 + 9;
      path.lineTo(bend, y1);
      path.lineTo(bend, between);
      path.lineTo(x2 - 9, between);
      path.lineTo(x2 - 9, y2);
      path.lineTo(x2, y2);
      by = (x1 + x2) / 2;
      markY = between;
    }
    g.draw(path);
    if (suspect) {
      mark(g, by, markY);
    }
  }

  /** The shape of "look here" on a joint that is likely at fault. */
  private void mark(Graphics2D g, double x, double y) {
    g.setColor(WindowTheme.colour(palette.groundOf(Tone.CAUTION)));
    g.fill(new RoundRectangle2D.Double(x - 13, y - 13, 26, 26, 6, 6));
    g.setColor(WindowTheme.colour(palette.inkOn(Tone.CAUTION)));
    Shapes.draw(g, Tone.CAUTION, x - 8, y - 9, 16);
  }

  private void box(Graphics2D g, Grid grid, SearchView.Box box) {
    double wide = grid.boxWide();
    double high = grid.boxHigh();
    double x = grid.x(box) - wide / 2;
    double y = grid.y(box) - high / 2;
    RoundRectangle2D shape = new RoundRectangle2D.Double(x, y, wide, high, 8, 8);
    boolean plain = box.tone() == Tone.PLAIN;
    g.setColor(WindowTheme.colour(plain ? palette.ground() : palette.groundOf(box.tone())));
    g.fill(shape);
    g.setColor(WindowTheme.colour(box.tone() == Tone.ASK ? palette.focus() : palette.edge()));
    g.setStroke(new BasicStroke(box.tone() == Tone.ASK ? 4 : 1.5f));
    g.draw(shape);
    int ink = plain ? palette.ink() : palette.inkOn(box.tone());
    g.setColor(WindowTheme.colour(ink));
    double room = wide - 16;
    if (!plain) {
      Shapes.draw(g, box.tone(), x + wide - 26, y + high - 26, 16);
    }
    Font name = WindowTheme.font(true, 15);
    double baseline = y + 19;
    for (String part : wrapped(g.getFontMetrics(name), box.name(), room, 2)) {
      g.setFont(name);
      g.drawString(part, (float) (x + 8), (float) baseline);
      baseline += 17;
    }
    g.setFont(WindowTheme.font(box.found(), box.found() ? 19 : 14));
    g.setColor(WindowTheme.colour(plain ? palette.quietInk() : ink));
    g.drawString(box.level(), (float) (x + 8), (float) (y + high - 10));
  }

  /** Words in at most so many lines; what does not fit ends in dots. */
  static List<String> wrapped(FontMetrics font, String text, double room, int lines) {
    List<String> parts = new ArrayList<>();
    String line = "";
    for (String word : text.split(" ")) {
      String longer = line.isEmpty() ? word : line + " " + word;
      if (font.stringWidth(longer) <= room || line.isEmpty()) {
        line = longer;
      } else {
        parts.add(line);
        line = word;
      }
    }
    parts.add(line);
    if (parts.size() > lines) {
      String last = parts.get(lines - 1) + " " + parts.get(lines);
      parts = new ArrayList<>(parts.subList(0, lines - 1));
      parts.add(last);
    }
    int end = parts.size() - 1;
    String cut = parts.get(end);
    while (font.stringWidth(cut) > room && cut.length() > 2) {
      cut = cut.substring(0, cut.length() - 2).strip() + "\u2026";
    }
    parts.set(end, cut);
    return parts;
  }
}
