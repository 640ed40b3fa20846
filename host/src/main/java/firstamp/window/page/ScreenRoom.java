package firstamp.window.page;

import java.awt.Dimension;
import java.awt.GraphicsConfiguration;
import java.awt.GraphicsEnvironment;
import java.awt.Rectangle;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;

/**
 * How large the window can be made on this screen. The runtime takes whole steps, and reads its
 * scale once, before it knows the screen: a process of its own measures it.
 */
public final class ScreenRoom {
  /** Sizes that are offered. */
  public static final int MOST = 3;

  private static final Dimension LEAST = new Dimension(940, 520);
  private static final long WAIT_S = 10;

  private ScreenRoom() {}

  /**
   * Hands width and height of the screen to the process that asked.
   *
   * @throws IOException nobody asked
   */
  public static void main(String[] arguments) throws IOException {
    Rectangle room = GraphicsEnvironment.getLocalGraphicsEnvironment().getMaximumWindowBounds();
    String sides = room.width + " " + room.height;
    try (FileOutputStream asked = new FileOutputStream(FileDescriptor.out)) {
      asked.write(sides.getBytes(StandardCharsets.US_ASCII));
    }
  }

  /** The largest size at which everything has its room on a screen of so many points. */
  public static int largest(int width, int height) {
    return Math.max(1, Math.min(MOST, Math.min(width / LEAST.width, height / LEAST.height)));
  }

  /** The largest size for the screen of a window that is open. */
  public static int largest(GraphicsConfiguration screen) {
    Rectangle bounds = screen.getBounds();
    double scale = screen.getDefaultTransform().getScaleX();
    return largest((int) (bounds.width * scale), (int) (bounds.height * scale));
  }

  /** The largest size for this screen, before any window part is made; unknown = all fit. */
  public static int largest() {
    try {
      Process measuring =
          new ProcessBuilder(
                  Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                  "-Dsun.java2d.uiScale=1",
                  "-cp",
                  System.getProperty("java.class.path"),
                  ScreenRoom.class.getName())
              .redirectError(ProcessBuilder.Redirect.DISCARD)
              .start();
      String said =
          new String(measuring.getInputStream().readAllBytes(), StandardCharsets.UTF_8).strip();
      measuring.waitFor(WAIT_S, TimeUnit.SECONDS);
      String[] sides = said.split(" ");
      return largest(Integer.parseInt(sides[0]), Integer.parseInt(sides[1]));
    } catch (IOException | NumberFormatException | ArrayIndexOutOfBoundsException unknown) {
      // Without a screen the window says so itself.
      return MOST;
    } catch (InterruptedException stop) {
      Thread.currentThread().interrupt();
      return MOST;
    }
  }
}
