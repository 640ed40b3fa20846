package firstamp.window;

import java.awt.Component;
import java.awt.KeyEventDispatcher;
import java.awt.Window;
import java.awt.event.KeyEvent;
import javax.swing.SwingUtilities;
import javax.swing.text.JTextComponent;

/** Two more keys while a set is watched: F finds a lost signal, U opens the unknown wires. */
final class ThinkKeys implements KeyEventDispatcher {
  private final Window window;
  private final KeyEventDispatcher rest;
  private final Runnable search;
  private final Runnable wires;

  ThinkKeys(Window window, KeyEventDispatcher rest, Runnable search, Runnable wires) {
    this.window = window;
    this.rest = rest;
    this.search = search;
    this.wires = wires;
  }

  @Override
  public boolean dispatchKeyEvent(KeyEvent event) {
    Component source = event.getComponent();
    boolean here =
        source != null
            && (source == window || SwingUtilities.getWindowAncestor(source) == window)
            && !(source instanceof JTextComponent text && text.isEditable());
    int code = event.getKeyCode();
    boolean ours = code == KeyEvent.VK_F || code == KeyEvent.VK_U;
    if (here && ours && !event.isControlDown() && !event.isAltDown() && !event.isMetaDown()) {
      if (event.getID() == KeyEvent.KEY_PRESSED) {
        (code == KeyEvent.VK_F ? search : wires).run();
      }
      return true;
    }
    return rest.dispatchKeyEvent(event);
  }
}
