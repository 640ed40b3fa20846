package firstamp.window;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.app.Desk;
import firstamp.app.Watched;
import firstamp.app.WindowOptions;
import firstamp.bench.Snapshot;
import firstamp.emulate.line.Pace;
import firstamp.model.TimeSource;
import firstamp.run.questions.OpenQuestion;
import firstamp.window.frame.FrameKeys;
import java.awt.event.KeyEvent;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import javax.swing.JLabel;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A countdown stopped by any key: the page says so, and key 1, held, begins again. */
@NeedsDisplay
@Timeout(value = 120, unit = TimeUnit.SECONDS)
class StoppedCountdownRobotTest {
  @TempDir private Path folder;
  private BenchWindow window;
  private Watched watched;
  private BenchRobot hands;

  private Snapshot now() {
    return watched.session().snapshot();
  }

  private boolean asked(String id) {
    List<OpenQuestion> waiting = now().questions();
    return hands.stands("question-yes") && !waiting.isEmpty() && waiting.get(0).id().equals(id);
  }

  private String headline() {
    return ((JLabel) Components.named(window.frame(), "sentence-headline")).getText();
  }

  @AfterEach
  void close() throws Exception {
    BenchRobot.close(window);
  }

  private void open() throws Exception {
    Desk desk =
        new Desk(
            folder.resolve("bench.db"),
            folder.resolve("demo.db"),
            TestBench.ports("healthy", Pace.REAL_TIME),
            TimeSource.system(),
            sheet -> null);
    watched = desk.startEmulated("healthy");
    window =
        BenchWindow.show(
            desk, watched, new WindowOptions(WindowOptions.Theme.LIGHT, Locale.ENGLISH, false));
    hands = new BenchRobot(window);
    hands.await("the first question", () -> hands.stands("question-yes"));
    hands.key(KeyEvent.VK_1);
    hands.await("the last question", () -> asked("hands-out"));
    hands.pause(400);
  }

  private void countdown() throws Exception {
    // On a busy machine a hold can be cut short; a person holds again.
    for (int hold = 0; hold < 4 && now().countdownS() == null; hold++) {
      hands.hold(KeyEvent.VK_1, 900);
      hands.pause(1_000);
    }
    hands.await("the countdown", () -> now().countdownS() != null);
    hands.pause(400);
  }

  @Test
  void anyKeyStopsItAndKeyOneHeldBeginsAgain() throws Exception {
    open();
    for (int stop : new int[] {KeyEvent.VK_SPACE, KeyEvent.VK_Z, FrameKeys.PEDAL}) {
      countdown();
      hands.key(stop);
      hands.await("the question again", () -> asked("hands-out"));
      hands.await("the sentence", () -> headline().equals("Stopped before switching on"));
      assertThat(BenchRobot.on(() -> window.page().name())).isEqualTo("watch");
      // The dead second, then a tap: too short.
      hands.pause(1_200);
      hands.key(KeyEvent.VK_1);
      hands.pause(300);
      assertThat(asked("hands-out")).as("a tap switches nothing on").isTrue();
    }
    countdown();
    hands.await("the set on", () -> now().phase() == Snapshot.Phase.ON);
    hands.key(KeyEvent.VK_SPACE);
    hands.await("off", () -> now().phase().ordinal() > Snapshot.Phase.ON.ordinal());
    assertThat(now().powerUp()).isEqualTo(1);
  }
}
