package firstamp.window;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.app.Desk;
import firstamp.app.WindowOptions;
import firstamp.bench.Snapshot;
import firstamp.emulate.line.Pace;
import firstamp.model.TimeSource;
import firstamp.window.page.HeldKey;
import firstamp.window.pages.HomePage;
import firstamp.window.pages.VerdictPage;
import firstamp.window.pages.WatchPage;
import java.awt.Component;
import java.awt.Container;
import java.awt.Point;
import java.awt.Robot;
import java.awt.event.InputEvent;
import java.awt.event.KeyEvent;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import javax.swing.SwingUtilities;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * From the first screen to a saved report on the emulated set, in real time, as a person does it:
 * once with the keyboard alone, once with the mouse.
 */
@NeedsDisplay
@Timeout(value = 120, unit = TimeUnit.SECONDS)
class FlowRobotTest {
  private static final int WAIT_MS = 40;
  private static final int MOST_ROUNDS = 1000;

  @TempDir Path folder;
  private Robot robot;
  private BenchWindow window;
  private Desk desk;

  @BeforeEach
  void open() throws Exception {
    robot = new Robot();
    desk =
        new Desk(
            folder.resolve("bench.db"),
            folder.resolve("demo.db"),
            TestBench.ports("healthy", Pace.REAL_TIME),
            TimeSource.system(),
            sheet -> null);
    window =
        BenchWindow.show(
            desk, null, new WindowOptions(WindowOptions.Theme.LIGHT, Locale.ENGLISH, false));
    await("the first screen", () -> window.page() instanceof HomePage home && home.ready());
    // No window manager gives the focus here: a click on an empty place stands for it.
    Point at = on(() -> window.frame().getLocationOnScreen());
    robot.mouseMove(at.x + 640, at.y + 3);
    robot.mousePress(InputEvent.BUTTON1_DOWN_MASK);
    robot.mouseRelease(InputEvent.BUTTON1_DOWN_MASK);
    await("the focus", () -> window.frame().isFocused());
  }

  @AfterEach
  void close() throws Exception {
    SwingUtilities.invokeAndWait(window::end);
    window.awaitClosed();
  }

  private static <T> T on(Callable<T> task) throws Exception {
    return Components.onSwing(task);
  }

  private void await(String what, Callable<Boolean> condition) throws Exception {
    for (int round = 0; round < MOST_ROUNDS; round++) {
      if (on(condition)) {
        return;
      }
      robot.delay(WAIT_MS);
    }
    String stands =
        window.page() instanceof WatchPage
            ? ", in phase " + now().phase() + ", " + now().questions().size() + " questions"
            : "";
    throw new AssertionError(
        "waited in vain for " + what + ", on page " + window.page().name() + stands);
  }

  /** Without a wait between: a key that is held for long repeats itself, and answers what comes. */
  private void key(int code) {
    robot.keyPress(code);
    robot.keyRelease(code);
    robot.delay(WAIT_MS);
  }

  /** As long as a hand takes: what comes back sooner is the same key, repeating itself. */
  private void letGo() {
    robot.delay((int) HeldKey.REPEAT_MILLIS * 4);
  }

  private void click(String name) throws Exception {
    await(name, () -> stands(name));
    Point at =
        on(
            () -> {
              Component found = Components.named(window.frame(), name);
              Point corner = found.getLocationOnScreen();
              return new Point(corner.x + found.getWidth() / 2, corner.y + found.getHeight() / 2);
            });
    robot.mouseMove(at.x, at.y);
    robot.mousePress(InputEvent.BUTTON1_DOWN_MASK);
    robot.mouseRelease(InputEvent.BUTTON1_DOWN_MASK);
  }

  /** Whether it can be seen and used: what the session knows comes to the window a moment later. */
  private boolean stands(String name) {
    return all(window.frame().getContentPane())
        .anyMatch(each -> name.equals(each.getName()) && each.isShowing() && each.isEnabled());
  }

  private static Stream<Component> all(Container root) {
    return Components.visible(root).stream();
  }

  private Snapshot now() {
    return ((WatchPage) window.page()).session().snapshot();
  }

  /** Whether this is what is asked, and can be seen. */
  private boolean asked(String id) {
    return window.page() instanceof WatchPage
        && stands("question-yes")
        && !now().questions().isEmpty()
        && now().questions().get(0).id().equals(id);
  }

  private boolean phase(Snapshot.Phase phase) {
    return window.page() instanceof WatchPage && now().phase() == phase;
  }

  private boolean onFor(double ms) {
    return phase(Snapshot.Phase.ON)
        && now().times().elapsedMs() != null
        && now().times().elapsedMs() > ms;
  }

  private List<Path> reports() throws Exception {
    Path reports = folder.resolve("reports");
    if (!Files.isDirectory(reports)) {
      return List.of();
    }
    try (Stream<Path> files = Files.list(reports)) {
      return files.toList();
    }
  }

  private void theReportIsThere() throws Exception {
    await("the report", () -> reports().size() == 1);
    await("the whole report", () -> Files.readString(reports().get(0)).strip().endsWith("</html>"));
    assertThat(Files.readString(reports().get(0))).contains("Larch D2 dictation unit");
    assertThat(folder.resolve("bench.db")).doesNotExist();
  }

  @Test
  void theKeyboardAloneGetsFromTheFirstScreenToASavedReport() throws Exception {
    key(KeyEvent.VK_ENTER);
    await("a question", () -> stands("question-yes"));
    key(KeyEvent.VK_NUMPAD1);
    await("the last question", () -> asked("hands-out"));
    letGo();
    key(KeyEvent.VK_NUMPAD1);
    key(KeyEvent.VK_ENTER);
    assertThat(asked("hands-out")).as("neither a tap nor Enter switches on").isTrue();
    letGo();
    robot.keyPress(KeyEvent.VK_NUMPAD1);
    await("the countdown", () -> !asked("hands-out"));
    robot.keyRelease(KeyEvent.VK_NUMPAD1);
    await("the set on", () -> onFor(1200));
    key(KeyEvent.VK_SPACE);
    await("its end", () -> phase(Snapshot.Phase.ENDED) && stands("verdict"));
    key(KeyEvent.VK_ENTER);
    await("the verdict", () -> window.page() instanceof VerdictPage page && page.ready());
    key(KeyEvent.VK_ENTER);
    theReportIsThere();
    key(KeyEvent.VK_ESCAPE);
    await("the first screen with it", () -> window.page() instanceof HomePage home && home.ready());
  }

  @Test
  void theMouseGetsFromTheFirstScreenToASavedReport() throws Exception {
    click("home.start");
    click("question-yes");
    await("the last question", () -> asked("hands-out"));
    letGo();
    click("question-yes");
    assertThat(asked("hands-out")).as("a click does not switch on").isTrue();
    letGo();
    robot.mousePress(InputEvent.BUTTON1_DOWN_MASK);
    await("the countdown", () -> !asked("hands-out"));
    robot.mouseRelease(InputEvent.BUTTON1_DOWN_MASK);
    await("the set on", () -> onFor(1200));
    click("off");
    await("its end", () -> phase(Snapshot.Phase.ENDED));
    click("verdict");
    await("the verdict", () -> window.page() instanceof VerdictPage page && page.ready());
    click("verdict.save");
    theReportIsThere();
    click("verdict.home");
    await("the first screen with it", () -> window.page() instanceof HomePage home && home.ready());
  }
}
