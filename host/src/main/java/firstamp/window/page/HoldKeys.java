package firstamp.window.page;

import java.util.function.Consumer;
import javax.swing.Timer;

/**
 * Keys of a page on which one key is held down while a clip is on a point. The rest goes to the
 * page's usual keys.
 *
 * <p>Some systems repeat a held key as releases and presses in turn: a release counts only when no
 * press follows it at once.
 */
public final class HoldKeys implements PageStrokes {
  static final int REPEAT_MS = 90;

  private final int holdKey;
  private final Consumer<Boolean> hold;
  private final PageStrokes rest;
  private final Timer released;
  private boolean held;

  public HoldKeys(int holdKey, Consumer<Boolean> hold, PageStrokes rest) {
    this.holdKey = holdKey;
    this.hold = hold;
    this.rest = rest;
    released = new Timer(REPEAT_MS, event -> let());
    released.setRepeats(false);
  }

  @Override
  public boolean pressed(Stroke stroke) {
    if (stroke.code() == holdKey) {
      released.stop();
      if (!held) {
        held = true;
        hold.accept(true);
      }
      return true;
    }
    return rest.pressed(stroke);
  }

  @Override
  public void released(int code) {
    if (code == holdKey) {
      released.restart();
    }
  }

  private void let() {
    if (held) {
      held = false;
      hold.accept(false);
    }
  }

  @Override
  public void stop() {
    released.stop();
    let();
  }
}
