package firstamp.window;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.window.present.Limit;
import firstamp.window.strips.StripChart;
import firstamp.window.strips.StripsView;
import firstamp.window.widgets.Canvas;
import java.awt.Component;
import java.awt.event.KeyEvent;
import java.awt.event.MouseEvent;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.util.concurrent.TimeUnit;
import javax.swing.SwingUtilities;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** Limits moved in the real window, with the mouse and with keys. */
@NeedsDisplay
@Timeout(value = 60, unit = TimeUnit.SECONDS)
final class LimitDragTest extends BenchWindowCase {
  /** Drags the running limit to another value, all on the Swing thread of a painted window. */
  private void drag(double toAmps) throws Exception {
    paint();
    // In one go: a layout in between would move the strips from under the pointer.
    SwingUtilities.invokeAndWait(
        () -> {
          StripsView strips = window.panel().strips();
          Canvas canvas = strips.component();
          canvas.paint(
              new BufferedImage(canvas.getWidth(), canvas.getHeight(), BufferedImage.TYPE_INT_RGB)
                  .createGraphics());
          Limit limit =
              strips.limits().stream()
                  .filter(one -> one.kind() == firstamp.model.LimitKind.RUNNING_A)
                  .findFirst()
                  .orElseThrow();
          Rectangle2D area = strips.chart().areaOf(limit);
          int from = (int) Math.round(StripChart.yOf(area, limit.scale().place(limit.value())));
          int to = (int) Math.round(StripChart.yOf(area, limit.scale().place(toAmps)));
          int down = MouseEvent.BUTTON1_DOWN_MASK;
          send(canvas, MouseEvent.MOUSE_PRESSED, from, MouseEvent.BUTTON1, down);
          send(canvas, MouseEvent.MOUSE_DRAGGED, (from + to) / 2, MouseEvent.NOBUTTON, down);
          send(canvas, MouseEvent.MOUSE_DRAGGED, to, MouseEvent.NOBUTTON, down);
          send(canvas, MouseEvent.MOUSE_RELEASED, to, MouseEvent.BUTTON1, 0);
        });
  }

  private static void send(Component to, int id, int y, int button, int modifiers) {
    to.dispatchEvent(new MouseEvent(to, id, 1, modifiers, 500, y, 1, false, button));
  }

  @Test
  void aLimitDraggedTighterGoesToTheProbeAtOnce() throws Exception {
    open(FakeSession.Scene.HEALTHY);
    drag(0.6);
    assertThat(session.wishes).hasSize(1);
    String[] wish = session.wishes.get(0).split(" ");
    assertThat(wish[1]).isEqualTo("RUNNING_A");
    assertThat(Double.parseDouble(wish[3])).isBetween(0.5, 0.7);
  }

  @Test
  void aLimitDraggedWiderWhileOnIsNotAskedFor() throws Exception {
    open(FakeSession.Scene.HEALTHY);
    drag(1.8);
    show();
    assertThat(session.wishes).isEmpty();
  }

  @Test
  void aLimitDraggedWiderWhileOffIsConfirmedLineByLine() throws Exception {
    open(FakeSession.Scene.SHORT);
    SwingUtilities.invokeAndWait(() -> window.panel().toggleView());
    show();
    drag(3.0);
    show();
    assertThat(session.wishes).isEmpty();
    key(KeyEvent.VK_1, '1');
    key(KeyEvent.VK_1, '1');
    assertThat(session.wishes).isEmpty();
    key(KeyEvent.VK_1, '1');
    assertThat(session.wishes).singleElement().asString().startsWith("limit RUNNING_A 0 ");
  }

  @Test
  void aLimitIsMovedByKeysAlone() throws Exception {
    open(FakeSession.Scene.HEALTHY);
    key(KeyEvent.VK_L, 'l');
    key(KeyEvent.VK_DOWN, KeyEvent.CHAR_UNDEFINED);
    key(KeyEvent.VK_DOWN, KeyEvent.CHAR_UNDEFINED);
    assertThat(session.wishes).isEmpty();
    key(KeyEvent.VK_1, '1');
    assertThat(session.wishes).containsExactly("limit RUNNING_A 0 0.905");
  }

  @Test
  void theSpaceBarOpensTheSwitchAlsoWhileALimitIsHeld() throws Exception {
    open(FakeSession.Scene.HEALTHY);
    key(KeyEvent.VK_L, 'l');
    key(KeyEvent.VK_SPACE, ' ');
    assertThat(session.wishes).containsExactly("off");
  }

  @Test
  void aReplayAsksWhatADraggedLimitWouldHaveDone() throws Exception {
    open(FakeSession.Scene.REPLAY);
    drag(3.0);
    assertThat(session.wishes).singleElement().asString().startsWith("limit RUNNING_A 0 ");
  }
}
