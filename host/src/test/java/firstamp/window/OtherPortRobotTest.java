package firstamp.window;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.app.Desk;
import firstamp.app.Ports;
import firstamp.app.WindowOptions;
import firstamp.emulate.ProbeOptions;
import firstamp.emulate.Scenarios;
import firstamp.emulate.line.Pace;
import firstamp.model.ProbePort;
import firstamp.model.TimeSource;
import firstamp.window.pages.ReadyPage;
import java.awt.event.KeyEvent;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import javax.swing.JComboBox;
import javax.swing.JLabel;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * A port without a probe box: the page shows it, and there is a way back to the ports, by key and
 * mouse.
 */
@NeedsDisplay
@Timeout(value = 120, unit = TimeUnit.SECONDS)
class OtherPortRobotTest {
  private static final String DEAD = "/dev/ttyS0";
  private static final String SILENT = "/dev/ttyS1";

  @TempDir Path folder;
  private Desk desk;
  private BenchWindow window;
  private BenchRobot hands;

  /** A box behind one port, nothing behind another, and one that cannot be opened. */
  private static final class ThreePorts implements Ports {
    @Override
    public List<Found> list() {
      return List.of(
          new Found(DEAD, "serial port", true, null),
          new Found(SILENT, "serial port", true, null),
          new Found(TestBench.PORT, "USB serial adapter", true, null));
    }

    @Override
    public ProbePort open(String path) throws IOException {
      if (path.equals(DEAD)) {
        throw new IOException(DEAD + " cannot be opened.");
      }
      return path.equals(SILENT)
          ? new NobodyThere()
          : TestBench.box(Scenarios.open("healthy", ProbeOptions.of(1, Pace.REAL_TIME)));
    }
  }

  /** A line on which nobody says anything. */
  private static final class NobodyThere implements ProbePort {
    @Override
    public int read(byte[] buffer, int timeoutMillis) {
      LockSupport.parkNanos(timeoutMillis * 1_000_000L);
      return 0;
    }

    @Override
    public void write(byte[] bytes) {
      // Into the void.
    }

    @Override
    public TimeSource time() {
      return TimeSource.system();
    }

    @Override
    public String describe() {
      return SILENT;
    }

    @Override
    public void close() {
      // Nothing is open.
    }
  }

  @AfterEach
  void close() throws Exception {
    BenchRobot.close(window);
  }

  /** On the page before the power-up, then on with a port on which no box answers. */
  private void refused(String port) throws Exception {
    desk =
        new Desk(
            folder.resolve("bench.db"),
            folder.resolve("demo.db"),
            new ThreePorts(),
            TimeSource.system(),
            sheet -> null);
    window =
        BenchWindow.show(
            desk,
            tools -> new ReadyPage(tools, Scenarios.sheetJson("healthy")),
            new WindowOptions(WindowOptions.Theme.LIGHT, Locale.ENGLISH, false),
            TimeSource.system());
    hands = new BenchRobot(window);
    choose(port);
    hands.key(KeyEvent.VK_ENTER);
    hands.await("the refusal", () -> hands.stands("otherPort"));
    assertThat(
            BenchRobot.on(
                () -> ((JLabel) Components.named(window.frame(), "sentence-headline")).getText()))
        .isEqualTo("No probe box on this port");
    // The dead second after whatever could be on has ended.
    hands.pause(1_200);
  }

  private void choose(String port) throws Exception {
    hands.await("the ports", () -> ports().getItemCount() == 3);
    BenchRobot.on(
        () -> {
          ports().setSelectedItem(port);
          return null;
        });
  }

  private JComboBox<?> ports() {
    return (JComboBox<?>) Components.named(window.frame(), "ready.port");
  }

  private void theWayBackLeadsToTheBox() throws Exception {
    hands.await("the ports", () -> window.page() instanceof ReadyPage && hands.stands("ready.on"));
    assertThat(desk.settings().port()).as("no box answered on it").isNull();
    choose(TestBench.PORT);
    hands.key(KeyEvent.VK_ENTER);
    hands.await("the first question", () -> hands.stands("question-yes"));
    hands.await("its port", () -> TestBench.PORT.equals(desk.settings().port()));
  }

  @Test
  void enterLeadsBackToThePortsWhereTheLineStaysSilent() throws Exception {
    refused(SILENT);
    hands.key(KeyEvent.VK_ENTER);
    theWayBackLeadsToTheBox();
  }

  @Test
  void theButtonLeadsBackToThePortsWhereThePortCannotBeOpened() throws Exception {
    refused(DEAD);
    hands.click("otherPort");
    theWayBackLeadsToTheBox();
  }
}
