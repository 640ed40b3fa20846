package firstamp.window;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.cli.CommandRunner;
import java.awt.Component;
import java.awt.Container;
import java.awt.Frame;
import java.awt.event.WindowEvent;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import javax.swing.AbstractButton;
import javax.swing.SwingUtilities;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The window opens in the language that stands before the command, or without one. */
@NeedsDisplay
@Timeout(value = 60, unit = TimeUnit.SECONDS)
class WindowByLeadingOptionTest {
  @TempDir private Path folder;

  @Test
  void aLanguageAloneOpensTheWindowInIt() throws Exception {
    CompletableFuture<CommandRunner.Result> run =
        CompletableFuture.supplyAsync(
            () ->
                CommandRunner.run(
                    "--language", "de", "--log", folder.resolve("bench.db").toString()));
    Frame window = null;
    while (window == null && !run.isDone()) {
      LockSupport.parkNanos(20_000_000);
      window = Arrays.stream(Frame.getFrames()).filter(Frame::isShowing).findFirst().orElse(null);
    }
    assertThat(window).as(() -> run.join().err()).isNotNull();
    Frame shown = window;
    List<String> buttons = new ArrayList<>();
    SwingUtilities.invokeAndWait(() -> buttons(shown, buttons));
    SwingUtilities.invokeLater(
        () -> shown.dispatchEvent(new WindowEvent(shown, WindowEvent.WINDOW_CLOSING)));
    assertThat(run.get(30, TimeUnit.SECONDS).exitCode()).isZero();
    assertThat(buttons).anyMatch(text -> text.contains("Neues Gerät"));
  }

  private static void buttons(Container parent, List<String> texts) {
    for (Component each : parent.getComponents()) {
      if (each instanceof AbstractButton button && button.getText() != null) {
        texts.add(button.getText());
      }
      if (each instanceof Container container) {
        buttons(container, texts);
      }
    }
  }
}
