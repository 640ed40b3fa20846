package firstamp.window;

import firstamp.app.Hearing;
import firstamp.app.WindowOptions;
import firstamp.window.watch.BenchPanel;
import firstamp.window.widgets.Canvas;
import java.awt.Dimension;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.lang.reflect.InvocationTargetException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import javax.imageio.ImageIO;
import javax.swing.JFrame;
import javax.swing.SwingUtilities;

/**
 * Paints every view of the window into files, in every ground and size; see DEVELOPERS.md.
 *
 * <p>Arguments: the folder; then, each with a default, themes ({@code light,dark,high-contrast}),
 * scales ({@code 1,2}), languages ({@code en,de}), the beginning of the names of the views that are
 * wanted, and the size ({@code 1280x800}). A scale is set before the first window part is made, so
 * each gets a process of its own.
 */
public final class Screenshots {
  public static final Dimension SIZE = new Dimension(1280, 800);

  private Screenshots() {}

  public static void main(String[] arguments) throws Exception {
    Path folder = Files.createDirectories(Path.of(arguments[0]));
    String themes = argument(arguments, 1, "light,dark,high-contrast");
    String scales = argument(arguments, 2, "1,2");
    String languages = argument(arguments, 3, "en,de");
    String wanted = argument(arguments, 4, "");
    String size = argument(arguments, 5, "1280x800");
    if (System.getProperty("sun.java2d.uiScale") != null) {
      paint(folder, themes, scales, languages, wanted, size);
      System.exit(0);
    }
    for (String scale : scales.split(",")) {
      List<String> command =
          new ArrayList<>(
              List.of(
                  Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                  "-Dsun.java2d.uiScale=" + scale,
                  "-cp",
                  System.getProperty("java.class.path"),
                  Screenshots.class.getName(),
                  folder.toString(),
                  themes,
                  scale,
                  languages,
                  wanted,
                  size));
      int exit = new ProcessBuilder(command).inheritIO().start().waitFor();
      if (exit != 0) {
        System.exit(exit);
      }
    }
  }

  private static String argument(String[] arguments, int at, String usual) {
    return arguments.length > at ? arguments[at] : usual;
  }

  private static void paint(
      Path folder, String themes, String scale, String languages, String wanted, String size)
      throws Exception {
    double factor = Double.parseDouble(scale);
    String[] sides = size.split("x");
    Dimension room = new Dimension(Integer.parseInt(sides[0]), Integer.parseInt(sides[1]));
    try (Views views = new Views()) {
      for (String language : languages.split(",")) {
        Locale locale = Locale.forLanguageTag(language);
        for (String theme : themes.split(",")) {
          WindowOptions options = new WindowOptions(WindowOptions.Theme.of(theme), locale, false);
          for (Map.Entry<String, Views.Maker> view : views.makers().entrySet()) {
            if (view.getKey().startsWith(wanted)) {
              String name = String.join("-", view.getKey(), theme, scale, language, size) + ".png";
              BufferedImage image = picture(view.getValue(), options, factor, room);
              ImageIO.write(image, "png", folder.resolve(name).toFile());
            }
          }
        }
      }
    }
  }

  static BufferedImage picture(Views.Maker maker, WindowOptions options, double scale)
      throws Exception {
    return picture(maker, options, scale, SIZE);
  }

  /** In a window of another size. */
  private static BufferedImage picture(
      Views.Maker maker, WindowOptions options, double scale, Dimension size) throws Exception {
    return Components.onSwing(
        () -> {
          BufferedImage image =
              new BufferedImage(
                  (int) (size.width * scale),
                  (int) (size.height * scale),
                  BufferedImage.TYPE_INT_RGB);
          JFrame frame = Views.laidOut(maker.make(options), size);
          Graphics2D g = image.createGraphics();
          g.scale(scale, scale);
          frame.getContentPane().paint(g);
          g.dispose();
          frame.dispose();
          return image;
        });
  }

  /** A laid out window on a scene, never made visible. */
  public record Opened(JFrame frame, Framed framed, FakeSession session) {
    public static Opened of(FakeSession.Scene scene, WindowOptions.Theme theme, Dimension size) {
      FakeSession session = new FakeSession(scene);
      Framed framed =
          new Framed(new WindowOptions(theme, Locale.ENGLISH, false), session, Hearing.NOTHING);
      JFrame frame = new JFrame();
      frame.setUndecorated(true);
      frame.setContentPane(framed.component());
      framed.component().setPreferredSize(size);
      frame.pack();
      Opened opened = new Opened(frame, framed, session);
      opened.settle();
      return opened;
    }

    public BenchPanel panel() {
      return framed.panel();
    }

    /** Wrapped texts know their height only once they have a width. */
    void settle() {
      for (int round = 0; round < 3; round++) {
        framed.show(true);
        frame.invalidate();
        frame.validate();
      }
    }
  }

  /** The strips alone. */
  public static BufferedImage strips(FakeSession.Scene scene, WindowOptions.Theme theme)
      throws InterruptedException, InvocationTargetException, IOException {
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
