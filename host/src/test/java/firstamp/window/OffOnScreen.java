package firstamp.window;

import firstamp.log.BenchLog;
import firstamp.log.LogException;
import firstamp.model.ProbeEvent;
import firstamp.model.SwitchState;
import firstamp.model.TimeSource;
import java.awt.Component;
import java.awt.Frame;
import java.awt.Point;
import java.lang.reflect.Method;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.locks.LockSupport;
import javax.swing.JFrame;

/**
 * Runs the program as it is started by hand, waits until a set is on, and says where OFF lies on
 * the screen. A process of its own: a scale is read once.
 */
final class OffOnScreen {
  private OffOnScreen() {}

  /** The command's log, then its words. */
  public static void main(String[] words) throws Exception {
    Thread looking = new Thread(() -> look(Path.of(words[0])));
    looking.setDaemon(true);
    looking.start();
    String[] command = List.of(words).subList(1, words.length).toArray(String[]::new);
    Method main = Class.forName("firstamp.cli.Main").getMethod("main", String[].class);
    main.setAccessible(true);
    main.invoke(null, (Object) command);
  }

  private static void look(Path log) {
    while (!on(log)) {
      LockSupport.parkNanos(100_000_000);
    }
    try {
      System.out.println(Components.onSwing(OffOnScreen::where));
    } catch (Exception nothing) {
      System.out.println(nothing);
    }
    System.out.flush();
    Runtime.getRuntime().halt(0);
  }

  private static boolean on(Path file) {
    try {
      BenchLog log = BenchLog.openForReading(file, TimeSource.system());
      return !log.list().isEmpty()
          && log.find("last").events().stream().anyMatch(OffOnScreen::closed);
    } catch (LogException notYet) {
      return false;
    }
  }

  private static boolean closed(ProbeEvent event) {
    return event instanceof ProbeEvent.SwitchChanged changed && changed.state() == SwitchState.ON;
  }

  /** In dots of the screen: left, top, right and bottom of OFF. */
  private static String where() {
    JFrame frame = (JFrame) Frame.getFrames()[0];
    Component off = Components.named(frame.getContentPane(), "off");
    Point corner = off.getLocationOnScreen();
    double scale = frame.getGraphicsConfiguration().getDefaultTransform().getScaleX();
    return String.format(
        Locale.ROOT,
        "OFF %s %.0f %.0f %.0f %.0f",
        off.isEnabled() ? "ready" : "dead",
        corner.x * scale,
        corner.y * scale,
        (corner.x + off.getWidth()) * scale,
        (corner.y + off.getHeight()) * scale);
  }
}
