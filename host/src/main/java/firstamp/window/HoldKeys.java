package firstamp.window;

import java.awt.Component;
import java.awt.KeyEventDispatcher;
import java.awt.Window;
import java.awt.event.KeyEvent;
import java.util.function.Consumer;
import javax.swing.SwingUtilities;
import javax.swing.Timer;
import javax.swing.text.JTextComponent;

/**
 * Keys of a page on which one key is held down while a clip is on a point; the space bar opens the
 * switch, as everywhere. The rest goes to the page's usual keys.
 *
 * <p>Some systems repeat a held key as releases and presses in turn: a release counts only when no
 * press follows it at once.
 */
final class HoldKeys implements KeyEventDispatcher {
  static final int REPEAT_MS = 90;

  private final Window window;
  private final int holdKey;
  private final Consumer<Boolean> hold;
  private final Runnable off;
  private final KeyEventDispatcher rest;
  private final Timer released;
  private boolean held;

  HoldKeys(
      Window window, int holdKey, Consumer<Boolean> hold, Runnable off, KeyEventDispatcher rest) {
    this.window = window;
    this.holdKey = holdKey;
    this.hold = hold;
    this.off = off;
    this.rest = rest;
    released = new Timer(REPEAT_MS, event -> let());
    released.setRepeats(false);
  }

  @Override
  public boolean dispatchKeyEvent(KeyEvent event) {
    Component source = event.getComponent();
    if (source == null || source != window && SwingUtilities.getWindowAncestor(source) != window) {
      return false;
    }
    boolean typing = source instanceof JTextComponent text && text.isEditable();
    if (event.getKeyCode() == KeyEvent.VK_SPACE && !typing) {
      if (event.getID() == KeyEvent.KEY_PRESSED) {
        off.run();
      }
      return true;
    }
    if (event.getKeyCode() == holdKey && !typing) {
      if (event.getID() == KeyEvent.KEY_PRESSED) {
        press();
      } else if (event.getID() == KeyEvent.KEY_RELEASED) {
        released.restart();
      }
      return true;
    }
    return rest.dispatchKeyEvent(event);
  }

  private void press() {
    released.stop();
    if (!held) {
      held = true;
      hold.accept(true);
    }
  }

  private void let() {
    if (held) {
      held = false;
      hold.accept(false);
    }
  }

  /** The page is left: nothing is held any more. */
  void stop() {
    released.stop();
    let();
  }
}
