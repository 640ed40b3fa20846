package firstamp.window;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.app.WindowOptions;
import firstamp.window.page.Page;
import firstamp.window.search.LocatePage;
import firstamp.window.search.TrialPage;
import java.awt.Component;
import java.awt.Container;
import java.awt.Dimension;
import java.awt.Rectangle;
import java.awt.event.KeyEvent;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import javax.swing.SwingUtilities;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** A set that is on while another page than the watching one is in front, in the real window. */
@NeedsDisplay
@Timeout(value = 60, unit = TimeUnit.SECONDS)
class LiveWindowTest {
  private static final WindowOptions OPTIONS =
      new WindowOptions(WindowOptions.Theme.LIGHT, Locale.ENGLISH, false);
  private static final int PEDAL = KeyEvent.VK_F8;

  private final FakeSession session = new FakeSession(FakeSession.Scene.HEALTHY);
  private final SearchingSession searching = new SearchingSession(ThinkViews.search(2));
  private BenchWindow window;

  private void open() throws Exception {
    session.set(Scenes.withThinking(session.snapshot()));
    window = BenchWindow.show(session, OPTIONS);
  }

  private Page wires() throws Exception {
    open();
    return front(
        new TrialPage(
            Views.tools(OPTIONS, null),
            ThinkViews.wires("screened-lead", 4),
            ThinkViews.KEEPING,
            null));
  }

  private Page search() throws Exception {
    open();
    return front(new LocatePage(Views.tools(OPTIONS, null), searching, null, null));
  }

  private Page front(Page page) throws Exception {
    SwingUtilities.invokeAndWait(() -> window.shell().open(page));
    return page;
  }

  @AfterEach
  void close() throws Exception {
    SwingUtilities.invokeAndWait(() -> window.frame().dispose());
  }

  private void stroke(Component to, int code, char letter) throws Exception {
    long now = firstamp.model.TimeSource.system().epochMillis();
    for (int id : new int[] {KeyEvent.KEY_PRESSED, KeyEvent.KEY_RELEASED}) {
      long when = id == KeyEvent.KEY_PRESSED ? now : now + 80;
      SwingUtilities.invokeAndWait(
          () -> to.dispatchEvent(new KeyEvent(to, id, when, 0, code, letter)));
    }
  }

  private boolean off() {
    return session.wishes.contains("off") || searching.off;
  }

  private Component named(String name) throws Exception {
    return Components.onSwing(() -> Components.named(window.frame(), name));
  }

  @Test
  void theSpaceBarSwitchesOffOnTheWiresPage() throws Exception {
    stroke(wires().component(), KeyEvent.VK_SPACE, ' ');
    assertThat(off()).isTrue();
  }

  @Test
  void aStampSwitchesOffOnTheWiresPage() throws Exception {
    stroke(wires().component(), PEDAL, KeyEvent.CHAR_UNDEFINED);
    assertThat(off()).isTrue();
  }

  @Test
  void theWiresPageShowsStateAndOffWhileOn() throws Exception {
    wires();
    for (String part : new String[] {"header", "sentence", "figures", "off"}) {
      assertThat(named(part).isShowing()).as(part).isTrue();
    }
  }

  @Test
  void theSpaceBarSwitchesOffFromTheFieldOfTheSearch() throws Exception {
    search();
    stroke(named("search.typed"), KeyEvent.VK_SPACE, ' ');
    assertThat(off()).isTrue();
  }

  @Test
  void aStampSwitchesOffOnTheSearchPage() throws Exception {
    stroke(search().component(), PEDAL, KeyEvent.CHAR_UNDEFINED);
    assertThat(off()).isTrue();
  }

  @Test
  void aTripTakesThePageOver() throws Exception {
    search();
    session.set(new FakeSession(FakeSession.Scene.SHORT).snapshot());
    for (int round = 0; round < 100 && !window.page().name().equals("watch"); round++) {
      java.util.concurrent.locks.LockSupport.parkNanos(30_000_000);
    }
    assertThat(window.page().name()).isEqualTo("watch");
    assertThat(named("sentence").isShowing()).isTrue();
  }

  @Test
  void offIsTheLastThingToGo() throws Exception {
    open();
    for (Dimension size :
        new Dimension[] {
          new Dimension(1024, 600), new Dimension(640, 400), new Dimension(300, 200)
        }) {
      SwingUtilities.invokeAndWait(
          () -> {
            window.frame().setMinimumSize(null);
            window.frame().setSize(size);
            window.frame().validate();
            window.frame().validate();
          });
      Container content = window.frame().getContentPane();
      Component off = named("off");
      Rectangle bounds =
          Components.onSwing(
              () -> SwingUtilities.convertRectangle(off.getParent(), off.getBounds(), content));
      assertThat(new Rectangle(content.getSize()).contains(bounds))
          .as("%s %s", size, bounds)
          .isTrue();
      assertThat(bounds.height).as("%s", size).isGreaterThanOrEqualTo(90);
      assertThat(bounds.width).as("%s", size).isGreaterThanOrEqualTo(140);
    }
  }
}
