package firstamp.window;

import java.awt.Component;
import java.awt.KeyEventDispatcher;
import java.awt.KeyboardFocusManager;
import java.awt.Window;
import java.awt.event.KeyEvent;
import java.util.HashSet;
import java.util.Set;
import javax.swing.JButton;
import javax.swing.JComboBox;
import javax.swing.SwingUtilities;
import javax.swing.text.JTextComponent;

/**
 * The keys of the window.
 *
 * <p>The space bar, the one key that an elbow finds, always opens the switch, whatever has the
 * focus; no key that is hit by accident closes it. What says yes (1) does not repeat while it is
 * held down.
 */
final class Keys implements KeyEventDispatcher {
  /** The key that a pedal on the keyboard's line sends. */
  static final int PEDAL = KeyEvent.VK_F8;

  private final Window window;
  private final BenchActions actions;
  private final Set<Integer> down = new HashSet<>();
  private final Pedal pedal;

  Keys(Window window, BenchActions actions) {
    this.window = window;
    this.actions = actions;
    this.pedal = new Pedal(actions);
  }

  /**
   * Called often while the window is open: the pedal is judged by time.
   *
   * @param millis of the same clock as those of key events
   */
  void tick(long millis) {
    pedal.tick(millis);
  }

  void install() {
    KeyboardFocusManager.getCurrentKeyboardFocusManager().addKeyEventDispatcher(this);
  }

  void remove() {
    KeyboardFocusManager.getCurrentKeyboardFocusManager().removeKeyEventDispatcher(this);
  }

  @Override
  public boolean dispatchKeyEvent(KeyEvent event) {
    Component source = event.getComponent();
    if (source == null || source != window && SwingUtilities.getWindowAncestor(source) != window) {
      return false;
    }
    if (source instanceof JTextComponent text && text.isEditable() && !actions.armed()) {
      // Nothing is on: what is typed belongs to the text.
      return false;
    }
    if (event.getKeyCode() == PEDAL) {
      if (event.getID() == KeyEvent.KEY_PRESSED) {
        pedal.pressed(event.getWhen());
      } else if (event.getID() == KeyEvent.KEY_RELEASED) {
        pedal.released(event.getWhen());
      }
      return true;
    }
    if (event.getKeyCode() == KeyEvent.VK_SPACE || event.getKeyChar() == ' ') {
      if (event.getID() == KeyEvent.KEY_PRESSED && down.add(KeyEvent.VK_SPACE)) {
        actions.offOrHold();
      } else if (event.getID() == KeyEvent.KEY_RELEASED) {
        down.remove(KeyEvent.VK_SPACE);
      }
      return true;
    }
    if (event.getID() == KeyEvent.KEY_RELEASED) {
      down.remove(event.getKeyCode());
      return false;
    }
    if (event.getID() != KeyEvent.KEY_PRESSED
        || event.isControlDown()
        || event.isAltDown()
        || event.isMetaDown()) {
      return false;
    }
    boolean first = down.add(event.getKeyCode());
    return pressed(PageKeys.code(event), first, source);
  }

  private boolean pressed(int code, boolean first, Component source) {
    switch (code) {
      case KeyEvent.VK_1, KeyEvent.VK_NUMPAD1 -> once(first, actions::yes);
      case KeyEvent.VK_0, KeyEvent.VK_NUMPAD0 -> once(first, actions::no);
      case KeyEvent.VK_M, KeyEvent.VK_PLUS, KeyEvent.VK_ADD -> once(first, actions::mark);
      case KeyEvent.VK_L -> once(first, actions::nextLimit);
      case KeyEvent.VK_H -> once(first, actions::handsIn);
      case KeyEvent.VK_S -> once(first, actions::soak);
      case KeyEvent.VK_R -> once(first, actions::restore);
      case KeyEvent.VK_X -> once(first, actions::toggleSound);
      case KeyEvent.VK_W -> once(first, actions::toggleNotes);
      case KeyEvent.VK_Q -> once(first, actions::toggleWhatIf);
      case KeyEvent.VK_T -> once(first, actions::toggleView);
      case KeyEvent.VK_A -> once(first, actions::toggleMore);
      case KeyEvent.VK_V -> once(first, actions::next);
      case KeyEvent.VK_ESCAPE -> once(first, actions::home);
      case KeyEvent.VK_PERIOD, KeyEvent.VK_DECIMAL -> actions.step();
      case KeyEvent.VK_HOME -> actions.follow();
      case KeyEvent.VK_PAGE_UP -> actions.zoom(0.5);
      case KeyEvent.VK_PAGE_DOWN -> actions.zoom(2);
      case KeyEvent.VK_ENTER -> {
        return enter(first, source);
      }
      default -> {
        return arrow(code, source);
      }
    }
    return true;
  }

  private static void once(boolean first, Runnable action) {
    if (first) {
      action.run();
    }
  }

  private boolean enter(boolean first, Component source) {
    if (first && !actions.seen()) {
      boolean answer = source.getName() != null && source.getName().startsWith("question-");
      if (source instanceof JButton button && answer) {
        button.doClick();
      } else if (!actions.yes()) {
        if (source instanceof JButton button) {
          button.doClick();
        } else {
          actions.next();
        }
      }
    }
    return !(source instanceof JComboBox<?>);
  }

  private boolean arrow(int code, Component source) {
    if (source instanceof JComboBox<?>) {
      return false;
    }
    switch (code) {
      case KeyEvent.VK_LEFT -> actions.pan(-0.2);
      case KeyEvent.VK_RIGHT -> actions.pan(0.2);
      case KeyEvent.VK_UP -> {
        return actions.nudgeLimit(1);
      }
      case KeyEvent.VK_DOWN -> {
        return actions.nudgeLimit(-1);
      }
      case KeyEvent.VK_N -> actions.jump(true);
      case KeyEvent.VK_B -> actions.jump(false);
      default -> {
        return false;
      }
    }
    return true;
  }
}
