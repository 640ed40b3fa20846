package firstamp.window.pages;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import firstamp.app.Desk;
import firstamp.app.WindowOptions;
import firstamp.log.LogException;
import firstamp.window.TestBench;
import firstamp.window.page.Tools;
import firstamp.window.widgets.Palette;
import firstamp.window.words.Numbers;
import firstamp.window.words.Words;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Made ready aside, a replay leaves nothing behind: no thread, no priority. */
class ReplayWarmingTest {
  @TempDir Path folder;
  private Desk desk;
  private ReplayWarming warming;

  @BeforeEach
  void open() throws Exception {
    desk = TestBench.used(folder);
    warming =
        new ReplayWarming(
            desk,
            new Tools(
                new Words(Locale.ENGLISH),
                new Numbers(Locale.ENGLISH),
                Palette.of(WindowOptions.Theme.LIGHT),
                null,
                desk));
  }

  private static List<String> threads() {
    return Thread.getAllStackTraces().keySet().stream()
        .map(Thread::getName)
        .filter(List.of("replay", "logged-course")::contains)
        .toList();
  }

  @Test
  void leavesNothingBehind() throws Exception {
    int priority = Thread.currentThread().getPriority();
    warming.open(desk.log(), 1);
    assertThat(threads()).isEmpty();
    assertThat(Thread.currentThread().getPriority()).isEqualTo(priority);
  }

  @Test
  void leavesTheThreadAsItWasWhereThereIsNoSuchPowerUp() {
    int priority = Thread.currentThread().getPriority();
    assertThatThrownBy(() -> warming.open(desk.log(), 99)).isInstanceOf(LogException.class);
    assertThat(Thread.currentThread().getPriority()).isEqualTo(priority);
  }

  @Test
  void isMadeReadyOnceOnly() {
    assertThat(desk.warms()).isTrue();
    assertThat(desk.warms()).isFalse();
  }
}
