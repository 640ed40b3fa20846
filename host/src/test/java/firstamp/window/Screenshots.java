package firstamp.window;

import java.awt.Dimension;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.lang.reflect.InvocationTargetException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import javax.imageio.ImageIO;
import javax.swing.JFrame;
import javax.swing.SwingUtilities;

/**
 * Paints every view of the window into files: arguments are the folder, the theme and the scale.
 *
 * <p>Run under a virtual display; see DEVELOPERS.md.
 */
final class Screenshots {
  static final Dimension SIZE = new Dimension(1280, 800);

  private Screenshots() {}

  public static void main(String[] arguments) throws Exception {
    Path folder = Files.createDirectories(Path.of(arguments[0]));
    WindowOptions.Theme theme =
        WindowOptions.Theme.valueOf(arguments[1].toUpperCase(Locale.ROOT).replace('-', '_'));
    double scale = Double.parseDouble(arguments[2]);
    for (FakeSession.Scene scene : FakeSession.Scene.values()) {
      String name =
          scene.name().toLowerCase(Locale.ROOT).replace('_', '-')
              + "-"
              + arguments[1]
              + "-"
              + arguments[2]
              + ".png";
      ImageIO.write(picture(scene, theme, scale), "png", folder.resolve(name).toFile());
    }
    System.exit(0);
  }

  static BufferedImage picture(FakeSession.Scene scene, WindowOptions.Theme theme, double scale)
      throws InterruptedException, InvocationTargetException, IOException {
    BufferedImage image =
        new BufferedImage(
            (int) (SIZE.width * scale), (int) (SIZE.height * scale), BufferedImage.TYPE_INT_RGB);
    SwingUtilities.invokeAndWait(
        () -> {
          Opened opened = Opened.of(scene, theme, SIZE);
          Graphics2D g = image.createGraphics();
          g.scale(scale, scale);
          opened.frame().getContentPane().paint(g);
          g.dispose();
          opened.frame().dispose();
        });
    return image;
  }

  /** A laid out window on a scene, never made visible. */
  record Opened(JFrame frame, BenchPanel panel, FakeSession session) {
    static Opened of(FakeSession.Scene scene, WindowOptions.Theme theme, Dimension size) {
      FakeSession session = new FakeSession(scene);
      WindowTheme look = new WindowTheme(theme);
      BenchPanel panel =
          new BenchPanel(session, new BenchPresenter(Locale.ENGLISH), look.palette(), () -> {});
      JFrame frame = new JFrame();
      frame.setUndecorated(true);
      frame.setContentPane(panel.component());
      panel.component().setPreferredSize(size);
      Opened opened = new Opened(frame, panel, session);
      panel.show(session.snapshot(), null, true);
      frame.pack();
      opened.settle();
      return opened;
    }

    /** Wrapped texts know their height only once they have a width. */
    void settle() {
      for (int round = 0; round < 3; round++) {
        panel.show(session.snapshot(), null, true);
        frame.invalidate();
        frame.validate();
      }
    }
  }

  /** The strips alone. */
  static BufferedImage strips(FakeSession.Scene scene, WindowOptions.Theme theme)
      throws InterruptedException, InvocationTargetException {
    BufferedImage[] image = new BufferedImage[1];
    SwingUtilities.invokeAndWait(
        () -> {
          Opened opened = Opened.of(scene, theme, SIZE);
          Canvas canvas = opened.panel().strips().component();
          image[0] =
              new BufferedImage(canvas.getWidth(), canvas.getHeight(), BufferedImage.TYPE_INT_RGB);
          Graphics2D g = image[0].createGraphics();
          canvas.paint(g);
          g.dispose();
          opened.frame().dispose();
        });
    return image[0];
  }
}
