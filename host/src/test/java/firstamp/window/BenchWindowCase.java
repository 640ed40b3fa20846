package firstamp.window;

import firstamp.app.WindowOptions;
import firstamp.window.widgets.Canvas;
import java.awt.Component;
import java.awt.Graphics2D;
import java.awt.event.KeyEvent;
import java.awt.image.BufferedImage;
import java.util.Locale;
import javax.swing.SwingUtilities;
import org.junit.jupiter.api.AfterEach;

/** The real window on a scripted session. */
abstract class BenchWindowCase {
  static final WindowOptions OPTIONS =
      new WindowOptions(WindowOptions.Theme.LIGHT, Locale.ENGLISH, false);

  BenchWindow window;
  FakeSession session;

  void open(FakeSession.Scene scene) throws Exception {
    session = new FakeSession(scene);
    window = BenchWindow.show(session, OPTIONS);
    show();
  }

  @AfterEach
  void close() throws Exception {
    if (window != null) {
      SwingUtilities.invokeAndWait(() -> window.frame().dispose());
    }
  }

  void show() throws Exception {
    SwingUtilities.invokeAndWait(
        () -> {
          window.panel().show(session.snapshot(), null, true);
          window.shell().tick();
        });
  }

  void key(Component to, int id, int code, char character, long when) throws Exception {
    SwingUtilities.invokeAndWait(
        () -> to.dispatchEvent(new KeyEvent(to, id, when, 0, code, character)));
  }

  void key(int code, char character) throws Exception {
    Component to = window.panel().component();
    key(to, KeyEvent.KEY_PRESSED, code, character, System.nanoTime() / 1_000_000);
    key(to, KeyEvent.KEY_RELEASED, code, character, System.nanoTime() / 1_000_000);
  }

  BufferedImage paint() throws Exception {
    BufferedImage[] image = new BufferedImage[1];
    SwingUtilities.invokeAndWait(
        () -> {
          Canvas canvas = window.panel().strips().component();
          image[0] =
              new BufferedImage(canvas.getWidth(), canvas.getHeight(), BufferedImage.TYPE_INT_RGB);
          Graphics2D g = image[0].createGraphics();
          canvas.paint(g);
          g.dispose();
        });
    return image[0];
  }

  boolean isThere(String name) throws Exception {
    return Components.onSwing(
        () ->
            Components.visible(window.frame()).stream()
                .anyMatch(part -> name.equals(part.getName())));
  }
}
