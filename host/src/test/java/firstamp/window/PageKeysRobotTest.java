package firstamp.window;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.app.Desk;
import firstamp.app.ProbeStep;
import firstamp.app.WindowOptions;
import firstamp.emulate.line.Pace;
import firstamp.model.TimeSource;
import firstamp.window.page.Page;
import firstamp.window.page.Tools;
import firstamp.window.pages.HomePage;
import firstamp.window.pages.ProbePage;
import firstamp.window.pages.ReadyPage;
import firstamp.window.pages.WatchPage;
import java.awt.event.KeyEvent;
import java.nio.file.Path;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import java.util.function.Function;
import javax.swing.JComboBox;
import javax.swing.JRadioButton;
import javax.swing.text.JTextComponent;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * Real key strokes on pages that have lists and choices: everything can be done from the keyboard
 * (WCAG 2.2, success criteria 2.1.1 and 2.4.3, from memory).
 */
@NeedsDisplay
@Timeout(value = 60, unit = TimeUnit.SECONDS)
class PageKeysRobotTest {
  private static final WindowOptions OPTIONS =
      new WindowOptions(WindowOptions.Theme.LIGHT, Locale.ENGLISH, false);

  @TempDir Path folder;
  private Desk desk;
  private BenchWindow window;
  private BenchRobot hands;

  private void open(Function<Tools, Page> first) throws Exception {
    desk =
        new Desk(
            folder.resolve("bench.db"),
            folder.resolve("demo.db"),
            TestBench.ports("healthy", Pace.REAL_TIME),
            TimeSource.system(),
            sheet -> null);
    window = BenchWindow.show(desk, first, OPTIONS, TimeSource.system());
    hands = new BenchRobot(window);
  }

  @AfterEach
  void close() throws Exception {
    BenchRobot.close(window);
  }

  private <T> T part(String name, Class<T> type) {
    return type.cast(Components.named(window.frame(), name));
  }

  private boolean chosen(String name) throws Exception {
    return BenchRobot.on(() -> part(name, JRadioButton.class).isSelected());
  }

  private void theFocusIsOn(String name) throws Exception {
    hands.await(
        "the focus on " + name,
        () -> hands.stands(name) && part(name, JRadioButton.class).isFocusOwner());
  }

  private void openLook() throws Exception {
    open(HomePage::new);
    hands.await("the first screen", () -> window.page() instanceof HomePage home && home.ready());
    hands.key(KeyEvent.VK_7);
    theFocusIsOn("look.language-1");
  }

  @Test
  void languageAndLookHaveKeysAndTheFirstOfThemTheFocus() throws Exception {
    openLook();
    assertThat(BenchRobot.on(() -> part("look.theme-4", JRadioButton.class).getText()))
        .isEqualTo("4  dark");
    hands.key(KeyEvent.VK_2);
    hands.key(KeyEvent.VK_4);
    hands.key(KeyEvent.VK_7);
    hands.key(KeyEvent.VK_9);
    assertThat(chosen("look.language-2")).isTrue();
    assertThat(chosen("look.theme-4")).isTrue();
    assertThat(chosen("look.scale-7")).isTrue();
    hands.key(KeyEvent.VK_6);
    hands.key(KeyEvent.VK_ENTER);
    hands.await("the first screen", () -> window.page() instanceof HomePage);
    assertThat(desk.options(false))
        .isEqualTo(new WindowOptions(WindowOptions.Theme.DARK, Locale.GERMAN, false));
  }

  @Test
  void languageAndLookAreReachedWithTabAndArrowsToo() throws Exception {
    openLook();
    hands.key(KeyEvent.VK_DOWN);
    theFocusIsOn("look.theme-3");
    hands.key(KeyEvent.VK_RIGHT);
    hands.key(KeyEvent.VK_RIGHT);
    hands.key(KeyEvent.VK_RIGHT);
    theFocusIsOn("look.theme-5");
    assertThat(chosen("look.theme-5")).isTrue();
    hands.key(KeyEvent.VK_TAB);
    theFocusIsOn("look.scale-6");
    for (int stop = 0; stop < 3; stop++) {
      hands.key(KeyEvent.VK_TAB);
    }
    hands.await(
        "the focus on the button",
        () -> Components.named(window.frame(), "look.keep").isFocusOwner());
  }

  private String typed(String box) throws Exception {
    return BenchRobot.on(
        () ->
            ((JTextComponent) part(box, JComboBox.class).getEditor().getEditorComponent())
                .getText());
  }

  private boolean isOpen(String box) {
    return part(box, JComboBox.class).isPopupVisible();
  }

  private void chooseSecond(String box) throws Exception {
    hands.await("the ports", () -> part(box, JComboBox.class).getItemCount() >= 2);
    BenchRobot.on(
        () -> part(box, JComboBox.class).getEditor().getEditorComponent().requestFocusInWindow());
    hands.await(
        "the caret",
        () -> part(box, JComboBox.class).getEditor().getEditorComponent().isFocusOwner());
    hands.key(KeyEvent.VK_DOWN);
    hands.await("the open list", () -> isOpen(box));
    hands.key(KeyEvent.VK_DOWN);
    hands.key(KeyEvent.VK_ENTER);
    hands.await("the closed list", () -> !isOpen(box));
  }

  @Test
  void enterInTheListOfPortsChoosesAndTheNextOneGoesOn() throws Exception {
    open(tools -> new ReadyPage(tools, firstamp.emulate.Scenarios.sheetJson("healthy")));
    chooseSecond("ready.port");
    hands.pause(300);
    assertThat(BenchRobot.on(() -> window.page().name())).isEqualTo("ready");
    assertThat(typed("ready.port")).isEqualTo("/dev/ttyS0");
    hands.key(KeyEvent.VK_ENTER);
    hands.await("the next page", () -> window.page() instanceof WatchPage);
  }

  @Test
  void enterInTheListOfBoxesChoosesAndBeginsNothing() throws Exception {
    open(ProbePage::new);
    chooseSecond("probe.port");
    hands.pause(300);
    ProbePage page = (ProbePage) BenchRobot.on(() -> window.page());
    assertThat(page.flow().step()).isEqualTo(ProbeStep.START);
    assertThat(BenchRobot.on(() -> hands.stands("probe-said"))).as("nothing was tried").isFalse();
    assertThat(typed("probe.port")).isEqualTo("/dev/ttyS0");
    hands.key(KeyEvent.VK_ENTER);
    hands.await(
        "what became of it", () -> Components.named(window.frame(), "probe-said").isVisible());
  }
}
