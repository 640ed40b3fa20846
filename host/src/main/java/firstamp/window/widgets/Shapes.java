package firstamp.window.widgets;

import java.awt.BasicStroke;
import java.awt.Graphics2D;
import java.awt.geom.Area;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;

/** One shape per state, so that no state is told by hue alone. */
public final class Shapes {
  private Shapes() {}

  /** Draws the shape of a state into a square, in the present paint. */
  public static void draw(Graphics2D g, Tone tone, double x, double y, double size) {
    g.setStroke(new BasicStroke((float) (size / 10), 1, 1));
    switch (tone) {
      case PLAIN -> g.draw(new Line2D.Double(x, y + size / 2, x + size, y + size / 2));
      case CALM -> g.draw(new Ellipse2D.Double(x, y, size, size));
      case ASK -> {
        g.draw(new Rectangle2D.Double(x, y, size, size));
        stroke(g, x, y, size, 0.28, 0.62);
        dot(g, x, y, size);
      }
      case CAUTION -> {
        g.draw(corners(x, y, size, 0.5, 0, 1, 1, 0, 1));
        stroke(g, x, y, size, 0.4, 0.66);
        dot(g, x, y, size);
      }
      case ALARM -> g.fill(octagonWithBar(x, y, size));
    }
  }

  /** Eight corners and a bar across, which the ground is seen through. */
  private static Area octagonWithBar(double x, double y, double size) {
    Area shape =
        new Area(
            corners(
                x, y, size, 0.29, 0, 0.71, 0, 1, 0.29, 1, 0.71, 0.71, 1, 0.29, 1, 0, 0.71, 0,
                0.29));
    shape.subtract(
        new Area(new Rectangle2D.Double(x + 0.2 * size, y + 0.41 * size, 0.6 * size, 0.18 * size)));
    return shape;
  }

  private static void stroke(
      Graphics2D g, double x, double y, double size, double from, double to) {
    g.draw(new Line2D.Double(x + size / 2, y + from * size, x + size / 2, y + to * size));
  }

  private static void dot(Graphics2D g, double x, double y, double size) {
    double r = size / 14;
    g.fill(new Ellipse2D.Double(x + size / 2 - r, y + 0.8 * size - r, 2 * r, 2 * r));
  }

  private static Path2D corners(double x, double y, double size, double... points) {
    Path2D path = new Path2D.Double();
    path.moveTo(x + points[0] * size, y + points[1] * size);
    for (int at = 2; at < points.length; at += 2) {
      path.lineTo(x + points[at] * size, y + points[at + 1] * size);
    }
    path.closePath();
    return path;
  }
}
