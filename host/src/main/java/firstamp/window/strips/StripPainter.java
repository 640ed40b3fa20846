package firstamp.window.strips;

import firstamp.window.present.BenchView;
import firstamp.window.strips.StripsPicture.Band;
import firstamp.window.strips.StripsPicture.Level;
import firstamp.window.strips.StripsPicture.LevelKind;
import firstamp.window.strips.StripsPicture.Strip;
import firstamp.window.strips.StripsPicture.Trace;
import firstamp.window.widgets.Canvas;
import firstamp.window.widgets.Palette;
import firstamp.window.widgets.WindowTheme;
import java.awt.BasicStroke;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.awt.RenderingHints;
import java.awt.Shape;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Paints one strip: ground of the window, what lies outside, the trace, names and values. */
final class StripPainter {
  private static final BasicStroke TRACE =
      new BasicStroke(1.8f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_BEVEL);
  private static final BasicStroke BEHIND = new BasicStroke(1.4f, 0, 1, 1, new float[] {2, 2}, 0);
  private static final BasicStroke THIN = new BasicStroke(1f);
  private static final BasicStroke LIMIT = new BasicStroke(1.6f, 0, 1, 1, new float[] {9, 4}, 0);

  /** Names of traces keep clear of the values of the scale. */
  private static final double NAMES_ROOM = 140;

  private static final double HALF_POINT = 0.5;

  private final Palette palette;

  StripPainter(Palette palette) {
    this.palette = palette;
  }

  void paint(Graphics2D g, Rectangle2D area, Strip strip, StripsPicture picture) {
    Canvas.smooth(g);
    Shape before = g.getClip();
    g.clip(area);
    g.setPaint(WindowTheme.colour(palette.surface()));
    g.fill(area);
    Rectangle clip = g.getClipBounds();
    PlotArea place =
        new PlotArea(
            area,
            picture,
            clip == null ? area.getMinX() : clip.getMinX(),
            clip == null ? area.getMaxX() : clip.getMaxX());
    for (Band band : strip.bands()) {
      band(g, place, band);
    }
    for (Level level : strip.levels()) {
      line(g, place, level);
    }
    for (float[] behind : strip.behind()) {
      behind(g, place, behind);
    }
    for (Trace trace : strip.traces()) {
      outside(g, place, trace);
    }
    for (Trace trace : strip.traces()) {
      trace(g, place, trace);
    }
    for (BenchView.EventMark event : picture.events()) {
      g.setStroke(THIN);
      g.setPaint(WindowTheme.colour(palette.edge()));
      double x = place.x(event.ms());
      g.draw(new Line2D.Double(x, area.getMinY(), x, area.getMaxY()));
    }
    words(g, place, strip);
    g.setClip(before);
  }

  private void band(Graphics2D g, PlotArea place, Band band) {
    g.setPaint(WindowTheme.colour(palette.inside()));
    if (band.low().length == 1) {
      double top = place.y(band.high()[0]);
      g.fill(
          new Rectangle2D.Double(
              place.area().getX(), top, place.area().getWidth(), place.y(band.low()[0]) - top));
      return;
    }
    int last = place.end(band.low().length);
    for (int begin = place.first(last); begin < last; ) {
      int end = PlotArea.runEnd(band.low(), begin, last);
      if (end > begin) {
        g.fill(place.between(band.high(), band.low(), begin, end, 0));
        begin = end;
      } else {
        begin++;
      }
    }
  }

  private void line(Graphics2D g, PlotArea place, Level level) {
    if (level.kind() == LevelKind.VALUE) {
      return;
    }
    double left =
        Double.isFinite(level.fromMs()) ? place.x(level.fromMs()) : place.area().getMinX();
    double right =
        Double.isFinite(level.untilMs()) ? place.x(level.untilMs()) : place.area().getMaxX();
    double y = place.y(level.place());
    g.setStroke(level.kind() == LevelKind.LIMIT ? LIMIT : THIN);
    g.setPaint(
        WindowTheme.colour(level.kind() == LevelKind.LIMIT ? palette.ink() : palette.edge()));
    g.draw(new Line2D.Double(left, y, right, y));
  }

  /** The faint course of an earlier power-up: its means, in the tone of the spread. */
  private void behind(Graphics2D g, PlotArea place, float[] means) {
    g.setPaint(WindowTheme.colour(palette.spread()));
    g.setStroke(BEHIND);
    int last = place.end(means.length);
    for (int begin = place.first(last); begin < last; ) {
      int end = PlotArea.runEnd(means, begin, last);
      if (end > begin) {
        g.draw(place.meanLine(means, begin, end));
      }
      begin = Math.max(end, begin + 1);
    }
  }

  /** Fills from the edge that was left to the trace. */
  private void outside(Graphics2D g, PlotArea place, Trace trace) {
    g.setPaint(WindowTheme.colour(palette.outside()));
    double half = Math.max(0.6, (place.columnX(1) - place.columnX(0)) / 2);
    int last = place.end(trace.edge().length);
    for (int column = place.first(last); column < last; column++) {
      float edge = trace.edge()[column];
      if (Float.isNaN(edge) || Float.isNaN(trace.mean()[column])) {
        continue;
      }
      double y1 = place.y(edge);
      // To whichever end of the column lies further out.
      double above = trace.high()[column] - edge;
      double under = edge - trace.low()[column];
      double y2 = place.y(above > under ? trace.high()[column] : trace.low()[column]);
      g.fill(
          new Rectangle2D.Double(
              place.columnX(column) - half,
              Math.min(y1, y2),
              2 * half + 0.5,
              Math.max(2, Math.abs(y2 - y1))));
    }
  }

  private void trace(Graphics2D g, PlotArea place, Trace trace) {
    int last = place.end(trace.mean().length);
    for (int begin = place.first(last); begin < last; ) {
      int end = PlotArea.runEnd(trace.mean(), begin, last);
      if (end == begin) {
        begin++;
        continue;
      }
      // The spread without smooth edges: exact to the point, and many times cheaper to fill.
      g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_OFF);
      g.setPaint(WindowTheme.colour(palette.spread()));
      g.fill(place.between(trace.high(), trace.low(), begin, end, HALF_POINT));
      g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
      Path2D mean = place.meanLine(trace.mean(), begin, end);
      if (end == begin + 1) {
        mean.lineTo(place.columnX(begin) + 1, place.y(trace.mean()[begin]));
      }
      g.setPaint(WindowTheme.colour(palette.ink()));
      g.setStroke(TRACE);
      g.draw(mean);
      begin = end;
    }
  }

  private void words(Graphics2D g, PlotArea place, Strip strip) {
    Rectangle2D area = place.area();
    StripWords words = new StripWords(g, area, palette.surface());
    words.name(strip.name(), palette.ink());
    for (Level level : byWorth(strip)) {
      if (!level.text().isEmpty() && StripWords.isLimit(level)) {
        limit(words, place, level);
      }
    }
    for (Trace trace : strip.traces()) {
      int last = trace.mean().length - 1;
      while (last >= 0 && Float.isNaN(trace.mean()[last])) {
        last--;
      }
      if (last >= 0 && !trace.name().isEmpty()) {
        double x = Math.min(place.columnX(last) + StripWords.PAD, area.getMaxX() - NAMES_ROOM);
        double y = place.y(trace.mean()[last]);
        if (!words.beside(trace.name(), x, y - 5, palette.ink())) {
          words.beside(trace.name(), x, y + 16, palette.ink());
        }
      }
    }
    for (Level level : byWorth(strip)) {
      if (!level.text().isEmpty() && !StripWords.isLimit(level)) {
        words.value(level.text(), place.y(level.place()), palette.quietInk());
      }
    }
    for (Band band : strip.bands()) {
      bandName(words, place, band);
    }
  }

  private static List<Level> byWorth(Strip strip) {
    List<Level> levels = new ArrayList<>(strip.levels());
    levels.sort(Comparator.comparingInt(StripWords::rank));
    return levels;
  }

  private void limit(StripWords words, PlotArea place, Level level) {
    boolean ends = Double.isFinite(level.untilMs());
    double end = place.x(level.untilMs());
    if (place.x(level.fromMs()) > place.area().getMaxX() - 60
        || ends && end < place.area().getX()) {
      return;
    }
    double right =
        ends
            ? end + StripWords.PAD + words.width(level.text(), StripWords.VALUE)
            : place.area().getMaxX() - StripWords.VALUES_ROOM;
    words.limit(level.text(), right, place.y(level.place()), palette.quietInk());
  }

  private void bandName(StripWords words, PlotArea place, Band band) {
    if (band.name().isEmpty()) {
      return;
    }
    int first = 0;
    while (first < band.low().length && Float.isNaN(band.low()[first])) {
      first++;
    }
    if (first < band.low().length) {
      double x = Math.max(place.columnX(first), place.area().getX()) + StripWords.PAD;
      double above = place.y(band.high()[first]) - 4;
      double y = above > place.area().getY() + 30 ? above : place.y(band.low()[first]) + 15;
      words.beside(band.name(), x, y, palette.quietInk());
    }
  }
}
