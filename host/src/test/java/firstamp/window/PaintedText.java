package firstamp.window;

import java.awt.Dimension;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.util.ArrayList;
import java.util.List;
import javax.swing.JFrame;
import javax.swing.RepaintManager;

/** Every text of a view as it is really painted, by components and by hand alike. */
final class PaintedText {
  /** A pixel of the window at scale 1: the reference pixel of CSS Values 3, 1/96 inch. */
  private static final double PIXEL_MM = 25.4 / 96;

  private PaintedText() {}

  /** On the Swing thread. */
  static List<RecordingGraphics.Ink> of(Views.View view, Dimension size) {
    JFrame frame = Views.laidOut(view, size);
    // A buffer would be painted into past the one who notes.
    RepaintManager manager = RepaintManager.currentManager(frame);
    boolean buffered = manager.isDoubleBufferingEnabled();
    manager.setDoubleBufferingEnabled(false);
    BufferedImage image = new BufferedImage(size.width, size.height, BufferedImage.TYPE_INT_RGB);
    Graphics2D g = image.createGraphics();
    g.setClip(0, 0, size.width, size.height);
    RecordingGraphics noting = RecordingGraphics.over(g);
    frame.getContentPane().paint(noting);
    manager.setDoubleBufferingEnabled(buffered);
    g.dispose();
    frame.dispose();
    return noting.inks();
  }

  /** The angle under which so many pixels are seen, in minutes of arc. */
  static double arcMinutes(double pixels, double distanceMm) {
    return Math.toDegrees(Math.atan(pixels * PIXEL_MM / distanceMm)) * 60;
  }

  /** What is cut off, or lies on another text. */
  static List<String> faults(List<RecordingGraphics.Ink> inks) {
    List<String> faults = new ArrayList<>();
    for (int at = 0; at < inks.size(); at++) {
      RecordingGraphics.Ink ink = inks.get(at);
      if (ink.cutOff() > 1) {
        faults.add("\"" + ink.text() + "\" is cut off by " + ink.cutOff() + " at " + ink.box());
      }
      if (ink.text().matches(".*[^ ](\\.\\.\\.|\u2026)")) {
        faults.add("\"" + ink.text() + "\" has lost its end");
      }
      for (RecordingGraphics.Ink other : inks.subList(at + 1, inks.size())) {
        if (ink.touches(other, 0)) {
          faults.add("\"" + ink.text() + "\" lies on \"" + other.text() + "\"");
        }
      }
    }
    return faults;
  }
}
