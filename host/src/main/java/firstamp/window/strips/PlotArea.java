package firstamp.window.strips;

import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;

/** Where one strip is painted: course time and places to points, runs of columns to outlines. */
record PlotArea(Rectangle2D area, StripsPicture picture, double fromX, double toX) {
  /** Points by which a line may be straightened. */
  private static final double FLAT = 0.3;

  /** First column that can be seen, with one more so that lines come in from outside. */
  int first(int size) {
    return Math.max(0, Math.min(size, column(fromX) - 1));
  }

  /** One behind the last column that can be seen. */
  int end(int size) {
    return Math.max(0, Math.min(size, column(toX) + 3));
  }

  private int column(double x) {
    double ms =
        picture.fromMs()
            + (x - area.getX()) / area.getWidth() * (picture.toMs() - picture.fromMs());
    double column = (ms - picture.firstMs()) / picture.columnMs();
    return (int) Math.max(-10, Math.min(1e6, Math.floor(column)));
  }

  double x(double ms) {
    double share = (ms - picture.fromMs()) / (picture.toMs() - picture.fromMs());
    return Math.max(-1e4, Math.min(1e5, area.getX() + share * area.getWidth()));
  }

  double y(double at) {
    return area.getMaxY() - 2 - at * (area.getHeight() - 4);
  }

  double columnX(int column) {
    return x(picture.middleMs(column));
  }

  /** The line through the means; points that the eye could not tell from the line are left out. */
  Path2D meanLine(float[] values, int begin, int end) {
    Path2D line = new Path2D.Float(Path2D.WIND_NON_ZERO, 64);
    double kept = y(values[begin]);
    line.moveTo(columnX(begin), kept);
    for (int column = begin + 1; column < end; column++) {
      double y = y(values[column]);
      boolean next = column + 1 < end && Math.abs(y(values[column + 1]) - kept) > FLAT;
      if (Math.abs(y - kept) > FLAT || next || column == end - 1) {
        line.lineTo(columnX(column), y);
        kept = y;
      }
    }
    return line;
  }

  static int runEnd(float[] values, int begin, int last) {
    int end = begin;
    while (end < last && !Float.isNaN(values[end])) {
      end++;
    }
    return end;
  }

  Path2D between(float[] high, float[] low, int begin, int end, double wider) {
    Path2D path = new Path2D.Float(Path2D.WIND_NON_ZERO, 2 * (end - begin) + 2);
    path.moveTo(columnX(begin), y(high[begin]) - wider);
    for (int column = begin + 1; column < end; column++) {
      path.lineTo(columnX(column), y(high[column]) - wider);
    }
    for (int column = end - 1; column >= begin; column--) {
      path.lineTo(columnX(column), y(low[column]) + wider);
    }
    path.closePath();
    return path;
  }
}
