package firstamp.window;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.app.Desk;
import firstamp.app.Watched;
import firstamp.app.WindowOptions;
import firstamp.bench.Snapshot;
import firstamp.emulate.line.Pace;
import firstamp.model.TimeSource;
import firstamp.window.frame.FrameKeys;
import firstamp.window.page.Page;
import firstamp.window.search.LocatePage;
import firstamp.window.search.TrialPage;
import firstamp.window.words.Words;
import java.awt.Component;
import java.awt.Dimension;
import java.awt.event.InputEvent;
import java.awt.event.KeyEvent;
import java.awt.event.MouseEvent;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.stream.Stream;
import javax.swing.SwingUtilities;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The drawn window on the emulated probe: whatever page is in front and however it is switched off,
 * the switch opens and the page says so. Prints how long that took; no time decides.
 */
@NeedsDisplay
@Timeout(value = 120, unit = TimeUnit.SECONDS)
class DrawnOffTest {
  private static final List<String> PAGES = List.of("watch", "search", "wires");
  private static final List<String> WAYS = List.of("space", "escape", "stamp", "mouse");

  @TempDir private Path folder;

  /**
   * One try.
   *
   * @param size of the window in its own points; 640 x 400 is what scale 2 leaves of 1280 x 800
   */
  record Cell(Locale locale, Dimension size, String page, String way) {
    @Override
    public String toString() {
      return locale + " " + size.width + "x" + size.height + " " + page + " " + way;
    }
  }

  static Stream<Cell> some() {
    return Stream.of(
        new Cell(Locale.ENGLISH, Screenshots.SIZE, "wires", "space"),
        new Cell(Locale.GERMAN, new Dimension(1024, 600), "search", "stamp"));
  }

  /** Two languages, three sizes, ten of the twelve pairs of page and way: 60. */
  static Stream<Cell> all() {
    List<Cell> cells = new ArrayList<>();
    for (Locale locale : Words.LANGUAGES) {
      for (Dimension size :
          List.of(new Dimension(1024, 600), Screenshots.SIZE, new Dimension(640, 400))) {
        for (String page : PAGES) {
          for (String way : page.equals("watch") ? List.of("space", "mouse") : WAYS) {
            cells.add(new Cell(locale, size, page, way));
          }
        }
      }
    }
    return cells.stream();
  }

  @ParameterizedTest
  @MethodSource("some")
  void itOpensAndSaysSo(Cell cell) throws Exception {
    walk(cell);
  }

  @ParameterizedTest
  @MethodSource("all")
  @Tag("full")
  void itOpensAndSaysSoEverywhere(Cell cell) throws Exception {
    walk(cell);
  }

  private void walk(Cell cell) throws Exception {
    Desk desk =
        new Desk(
            folder.resolve("bench.db"),
            folder.resolve("demo.db"),
            TestBench.ports("healthy", Pace.REAL_TIME),
            TimeSource.system(),
            sheet -> null);
    Watched watched = desk.startEmulated("lead-off");
    WindowOptions options = new WindowOptions(WindowOptions.Theme.LIGHT, cell.locale(), false);
    BenchWindow window = BenchWindow.show(desk, watched, options);
    try {
      on(
          () -> {
            window.frame().setMinimumSize(null);
            window.frame().setSize(cell.size());
            window.frame().validate();
            return null;
          });
      await(
          () -> {
            watched
                .session()
                .snapshot()
                .questions()
                .forEach(asked -> watched.session().answer(asked.id(), true));
            return watched.session().snapshot().phase() == Snapshot.Phase.ON;
          });
      Component source = on(() -> front(window, cell.page()).component());
      long before = TimeSource.system().monotonicNanos();
      on(
          () -> {
            off(window, source, cell.way());
            return null;
          });
      await(() -> watched.session().snapshot().phase().ordinal() > Snapshot.Phase.ON.ordinal());
      long open = TimeSource.system().monotonicNanos();
      String falling = new Words(cell.locale()).get("sentence.falling");
      await(
          () ->
              window.page().name().equals("watch")
                  && ((javax.swing.JLabel) Components.named(window.frame(), "sentence-headline"))
                      .getText()
                      .equals(falling));
      System.out.printf(
          Locale.ROOT,
          "| %s | %.0f | %.0f |%n",
          cell,
          (open - before) / 1e6,
          (TimeSource.system().monotonicNanos() - before) / 1e6);
      assertThat(on(() -> Components.named(window.frame(), "off").getHeight()))
          .isGreaterThanOrEqualTo(90);
    } finally {
      SwingUtilities.invokeAndWait(window::end);
      window.awaitClosed();
    }
  }

  private static Page front(BenchWindow window, String name) {
    Page watch = window.page();
    Page next =
        switch (name) {
          case "search" ->
              new LocatePage(
                  window.shell().tools(), new SearchingSession(ThinkViews.search(2)), null, watch);
          case "wires" ->
              new TrialPage(
                  window.shell().tools(),
                  ThinkViews.wires("screened-lead", 4),
                  ThinkViews.KEEPING,
                  watch);
          default -> watch;
        };
    if (next != watch) {
      window.shell().open(next);
    }
    return next;
  }

  private static void off(BenchWindow window, Component source, String way) {
    if (way.equals("mouse")) {
      Component off = Components.named(window.frame(), "off");
      off.dispatchEvent(
          new MouseEvent(
              off,
              MouseEvent.MOUSE_PRESSED,
              1,
              InputEvent.BUTTON1_DOWN_MASK,
              20,
              20,
              1,
              false,
              MouseEvent.BUTTON1));
      return;
    }
    int code =
        way.equals("space")
            ? KeyEvent.VK_SPACE
            : way.equals("escape") ? KeyEvent.VK_ESCAPE : FrameKeys.PEDAL;
    long now = TimeSource.system().epochMillis();
    char letter = way.equals("space") ? ' ' : KeyEvent.CHAR_UNDEFINED;
    source.dispatchEvent(new KeyEvent(source, KeyEvent.KEY_PRESSED, now, 0, code, letter));
    source.dispatchEvent(new KeyEvent(source, KeyEvent.KEY_RELEASED, now + 80, 0, code, letter));
  }

  private static <T> T on(Callable<T> task) throws Exception {
    return Components.onSwing(task);
  }

  private static void await(Callable<Boolean> condition) throws Exception {
    while (!on(condition)) {
      LockSupport.parkNanos(5_000_000);
    }
  }
}
