package firstamp.window;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.app.Desk;
import firstamp.app.WindowOptions;
import firstamp.emulate.line.Pace;
import firstamp.model.TimeSource;
import firstamp.window.pages.HomePage;
import firstamp.window.pages.QuestionsPage;
import java.awt.event.KeyEvent;
import java.nio.file.Path;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import javax.swing.JTextField;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** What is typed first on a page goes into its field, by the keys of a real keyboard. */
@NeedsDisplay
@Timeout(value = 60, unit = TimeUnit.SECONDS)
class CaretTest {
  private static final WindowOptions OPTIONS =
      new WindowOptions(WindowOptions.Theme.LIGHT, Locale.ENGLISH, false);

  @TempDir Path folder;
  private BenchWindow window;
  private BenchRobot hands;

  private void bench() throws Exception {
    Desk desk =
        new Desk(
            folder.resolve("bench.db"),
            folder.resolve("demo.db"),
            TestBench.ports("healthy", Pace.REAL_TIME),
            TimeSource.system(),
            sheet -> null);
    window = BenchWindow.show(desk, null, OPTIONS);
    hands = new BenchRobot(window);
    hands.await("the first screen", () -> window.page() instanceof HomePage home && home.ready());
  }

  @AfterEach
  void close() throws Exception {
    if (window != null) {
      BenchRobot.close(window);
    }
  }

  private String text(String field) {
    return ((JTextField) Components.named(window.frame(), field)).getText();
  }

  private void theCaretIsIn(String field) throws Exception {
    hands.await(
        "the caret in " + field, () -> Components.named(window.frame(), field).isFocusOwner());
  }

  @Test
  void theNameOfANewSetIsTypedAtOnce() throws Exception {
    bench();
    hands.key(KeyEvent.VK_5);
    hands.await("the questions", () -> window.page() instanceof QuestionsPage);
    theCaretIsIn("questions.entry");
    hands.type("marten 7");
    hands.await("every letter in the field", () -> text("questions.entry").equals("marten 7"));
  }

  @Test
  void theWordsOfAMarkAreTypedAtOnce() throws Exception {
    FakeSession session = new FakeSession(FakeSession.Scene.OVER);
    window = BenchWindow.show(session, OPTIONS);
    hands = new BenchRobot(window);
    hands.key(KeyEvent.VK_W);
    hands.await("the field", () -> hands.stands("note-2"));
    theCaretIsIn("note-2");
    hands.type("waits for belt");
    hands.key(KeyEvent.VK_ENTER);
    hands.await("the words", () -> !session.wishes.isEmpty());
    assertThat(session.wishes).singleElement().asString().contains("waits for belt");
  }
}
