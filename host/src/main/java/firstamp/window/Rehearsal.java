package firstamp.window;

import firstamp.app.Desk;
import firstamp.app.Watched;
import firstamp.app.WindowOptions;
import firstamp.window.page.Page;
import firstamp.window.page.Shell;
import firstamp.window.page.Tools;
import firstamp.window.pages.HomePage;
import firstamp.window.pages.WatchPage;
import firstamp.window.widgets.WindowTheme;
import firstamp.window.words.Numbers;
import firstamp.window.words.Words;
import java.awt.Component;
import java.awt.Container;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.lang.reflect.InvocationTargetException;
import java.util.concurrent.Callable;
import java.util.function.Consumer;
import java.util.function.Function;
import javax.swing.JComponent;
import javax.swing.SwingUtilities;

/**
 * Lays out and paints pages into an image, where there may be no screen: what a window needs is
 * loaded by that, and nobody sees anything.
 */
public final class Rehearsal {
  private static final int WIDTH = 1280;
  private static final int HEIGHT = 800;

  private final Tools tools;

  private Rehearsal(Desk desk, WindowOptions options) {
    WindowTheme theme = new WindowTheme(options.theme());
    this.tools =
        new Tools(
            new Words(options.locale()),
            new Numbers(options.locale()),
            theme.palette(),
            new OffScreen(options),
            desk);
  }

  /** Paints the first screen. */
  public static void home(Desk desk, WindowOptions options) throws InterruptedException {
    onSwing(desk, options, tools -> new HomePage(tools), 2);
  }

  /**
   * Paints a session as it is now.
   *
   * @param pictures how many times
   */
  public static void watch(Desk desk, Watched watched, WindowOptions options, int pictures)
      throws InterruptedException {
    onSwing(desk, options, tools -> new WatchPage(tools, watched), pictures);
  }

  private static void onSwing(
      Desk desk, WindowOptions options, Function<Tools, Page> page, int pictures)
      throws InterruptedException {
    try {
      SwingUtilities.invokeAndWait(
          () -> {
            Rehearsal rehearsal = new Rehearsal(desk, options);
            rehearsal.paint(page.apply(rehearsal.tools), pictures);
          });
    } catch (InvocationTargetException failed) {
      throw new IllegalStateException("the pages could not be painted", failed.getCause());
    }
  }

  private void paint(Page page, int pictures) {
    JComponent whole = page.component();
    BufferedImage image = new BufferedImage(WIDTH, HEIGHT, BufferedImage.TYPE_INT_RGB);
    whole.setSize(WIDTH, HEIGHT);
    page.shown();
    for (int picture = 0; picture < pictures; picture++) {
      page.tick(true);
      // Only what is in a window paints its parts; and texts that are in one look for its place.
      whole.addNotify();
      layOut(whole);
      Graphics2D g = image.createGraphics();
      whole.paint(g);
      g.dispose();
      whole.removeNotify();
    }
    page.hidden();
  }

  /** Without a frame nobody else asks for it. */
  private static void layOut(Container container) {
    container.doLayout();
    for (Component part : container.getComponents()) {
      if (part instanceof Container inner) {
        layOut(inner);
      }
    }
  }

  /** A window of one page that nothing leads away from. */
  private record OffScreen(WindowOptions options) implements Shell {
    @Override
    public void open(Page page) {
      // There is one page only.
    }

    @Override
    public void home() {
      // There is one page only.
    }

    @Override
    public void close() {
      // Nothing is open.
    }

    @Override
    public void dress(WindowOptions next) {
      // It is dressed once.
    }

    @Override
    public <T> void aside(Callable<T> task, Consumer<T> then, Consumer<Exception> otherwise) {
      Shell.atOnce(task, then, otherwise);
    }
  }
}
