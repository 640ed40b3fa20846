package firstamp.window;

import java.awt.Component;
import java.awt.Point;
import java.awt.Robot;
import java.awt.event.InputEvent;
import java.awt.event.KeyEvent;
import java.util.concurrent.Callable;
import javax.swing.SwingUtilities;

/** Hands at a window: real key strokes and clicks, and patience for what follows. */
final class BenchRobot {
  static final int WAIT_MS = 40;
  private static final int MOST_ROUNDS = 1000;

  private final BenchWindow window;
  private final Robot robot;

  /** Hands at this window, which has the focus from here on. */
  BenchRobot(BenchWindow window) throws Exception {
    this.window = window;
    robot = new Robot();
    // No window manager gives the focus here: a click on an empty place stands for it.
    Point at = on(() -> window.frame().getLocationOnScreen());
    press(at.x + 640, at.y + 3);
    await("the focus", () -> window.frame().isFocused());
  }

  static <T> T on(Callable<T> task) throws Exception {
    return Components.onSwing(task);
  }

  void await(String what, Callable<Boolean> condition) throws Exception {
    for (int round = 0; round < MOST_ROUNDS; round++) {
      if (on(condition)) {
        return;
      }
      robot.delay(WAIT_MS);
    }
    throw new AssertionError(
        "waited in vain for " + what + ", on page " + window.page().name() + "\n" + said());
  }

  /** What stands on the page, for a failure. */
  private String said() throws Exception {
    StringBuilder text = new StringBuilder();
    for (Component each : on(() -> Components.visible(window.frame().getContentPane()))) {
      String name = each.getAccessibleContext().getAccessibleName();
      if (name != null && !name.isBlank()) {
        text.append(name).append(" | ");
      }
    }
    return text.toString();
  }

  /** A short stroke. */
  void key(int code) {
    robot.keyPress(code);
    robot.keyRelease(code);
    robot.delay(WAIT_MS);
  }

  /** A key held down for a time, repeating itself as the screen's server has it. */
  void hold(int code, int millis) {
    robot.keyPress(code);
    robot.delay(millis);
    robot.keyRelease(code);
    robot.delay(WAIT_MS);
  }

  /** Types small letters, digits and blanks. */
  void type(String text) {
    for (char letter : text.toCharArray()) {
      key(KeyEvent.getExtendedKeyCodeForChar(letter));
    }
  }

  private void press(int x, int y) {
    robot.mouseMove(x, y);
    robot.mousePress(InputEvent.BUTTON1_DOWN_MASK);
    robot.mouseRelease(InputEvent.BUTTON1_DOWN_MASK);
  }

  void click(String name) throws Exception {
    Point at = middleOf(name);
    press(at.x, at.y);
  }

  private Point middleOf(String name) throws Exception {
    await(name, () -> stands(name));
    return on(
        () -> {
          Component found = Components.named(window.frame(), name);
          Point corner = found.getLocationOnScreen();
          return new Point(corner.x + found.getWidth() / 2, corner.y + found.getHeight() / 2);
        });
  }

  /** Whether it can be seen and used: what the session knows comes to the window a moment later. */
  boolean stands(String name) {
    return Components.visible(window.frame().getContentPane()).stream()
        .anyMatch(each -> name.equals(each.getName()) && each.isShowing() && each.isEnabled());
  }

  void pause(int millis) {
    robot.delay(millis);
  }

  /** Ends the window and what it watched. */
  static void close(BenchWindow window) throws Exception {
    SwingUtilities.invokeAndWait(window::end);
    window.awaitClosed();
  }
}
