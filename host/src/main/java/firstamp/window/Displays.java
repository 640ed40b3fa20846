package firstamp.window;

import firstamp.app.WindowOptions;
import firstamp.window.strips.StripChart;
import firstamp.window.widgets.Palette;
import firstamp.window.widgets.Pieces;
import firstamp.window.widgets.WindowTheme;
import firstamp.window.words.Numbers;
import firstamp.window.words.Words;
import java.awt.AWTError;
import java.awt.GraphicsEnvironment;
import java.awt.HeadlessException;

/** Whether there is a screen, and how it is painted on. */
final class Displays {
  private static final String SERVER_PAINTS = "sun.java2d.xrender";

  private Displays() {}

  /**
   * On a screen of this computer smooth edges are painted in this process and sent as a whole:
   * asked of the screen's server piece by piece they take it several times as long, and the Swing
   * thread waits for that. A screen that is far away keeps its own way. Read once, at the first
   * use.
   */
  private static void paintHere() {
    String display = System.getenv("DISPLAY");
    boolean local = display != null && (display.startsWith(":") || display.startsWith("unix:"));
    if (local && System.getProperty(SERVER_PAINTS) == null) {
      System.setProperty(SERVER_PAINTS, "false");
    }
  }

  static void require() throws NoDisplayException {
    try {
      paintHere();
      if (GraphicsEnvironment.isHeadless()) {
        throw new NoDisplayException(null);
      }
      GraphicsEnvironment.getLocalGraphicsEnvironment().getDefaultScreenDevice();
    } catch (HeadlessException | AWTError | LinkageError none) {
      throw new NoDisplayException(none);
    }
  }

  /** The look and feel, the words, the chart and the widths of letters. */
  static void prepareParts(WindowOptions options) {
    Palette palette = new WindowTheme(options.theme()).palette();
    new StripChart(palette, new Numbers(options.locale()));
    String text = new Words(options.locale()).get("closing");
    new Pieces(new Words(options.locale()), palette)
        .label("text", text, true, 20)
        .getPreferredSize();
  }
}
