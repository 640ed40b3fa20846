package firstamp.window;

import java.awt.Component;
import java.awt.KeyEventDispatcher;
import java.awt.Window;
import java.awt.event.KeyEvent;
import java.util.HashSet;
import java.util.Set;
import javax.swing.JButton;
import javax.swing.JComboBox;
import javax.swing.JTextArea;
import javax.swing.SwingUtilities;
import javax.swing.text.JTextComponent;

/**
 * Keys of a page without a set on it: digits choose, Enter goes on, 0 and Escape go back. Where a
 * text is being typed, digits are text; no key acts twice while it is held down.
 */
final class PageKeys implements KeyEventDispatcher {
  private final Window window;
  private final Page page;
  private final Set<Integer> down = new HashSet<>();

  PageKeys(Window window, Page page) {
    this.window = window;
    this.page = page;
  }

  @Override
  public boolean dispatchKeyEvent(KeyEvent event) {
    Component source = event.getComponent();
    if (source == null || source != window && SwingUtilities.getWindowAncestor(source) != window) {
      return false;
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
    boolean typing = source instanceof JTextComponent text && text.isEditable();
    return pressed(code(event), first, source, typing);
  }

  private boolean pressed(int code, boolean first, Component source, boolean typing) {
    switch (code) {
      case KeyEvent.VK_ENTER -> {
        return !(source instanceof JTextArea && typing) && enter(first, source);
      }
      case KeyEvent.VK_ESCAPE -> once(first, page::back);
      // A keyboard pedal; it types nothing, so it also goes on from a field.
      case KeyEvent.VK_F8 -> once(first, page::goOn);
      case KeyEvent.VK_UP, KeyEvent.VK_KP_UP, KeyEvent.VK_DOWN, KeyEvent.VK_KP_DOWN -> {
        if (typing || source instanceof JComboBox<?>) {
          return false;
        }
        page.move(code == KeyEvent.VK_UP || code == KeyEvent.VK_KP_UP ? -1 : 1);
      }
      case KeyEvent.VK_LEFT, KeyEvent.VK_KP_LEFT, KeyEvent.VK_RIGHT, KeyEvent.VK_KP_RIGHT -> {
        if (typing) {
          return false;
        }
        page.across(code == KeyEvent.VK_LEFT || code == KeyEvent.VK_KP_LEFT ? -1 : 1);
      }
      case KeyEvent.VK_PAGE_UP -> page.turn(-1);
      case KeyEvent.VK_PAGE_DOWN -> page.turn(1);
      default -> {
        int digit = digit(code);
        if (typing || digit < 0) {
          return false;
        }
        once(first, digit == 0 ? page::back : () -> page.choose(digit));
      }
    }
    return true;
  }

  private boolean enter(boolean first, Component source) {
    if (source instanceof JComboBox<?> box && box.isPopupVisible()) {
      return false;
    }
    if (first) {
      if (source instanceof JButton button) {
        button.doClick();
      } else {
        page.goOn();
      }
    }
    return true;
  }

  private static void once(boolean first, Runnable action) {
    if (first) {
      action.run();
    }
  }

  /**
   * The key, with the two that answer questions taken as digits on a number pad whose lock is off:
   * nobody looks at that lamp with both hands on clips.
   */
  static int code(KeyEvent event) {
    if (event.getKeyLocation() == KeyEvent.KEY_LOCATION_NUMPAD) {
      switch (event.getKeyCode()) {
        case KeyEvent.VK_END:
          return KeyEvent.VK_NUMPAD1;
        case KeyEvent.VK_INSERT:
          return KeyEvent.VK_NUMPAD0;
        default:
          break;
      }
    }
    return event.getKeyCode();
  }

  /** 0 to 9 of either row, -1 for another key. */
  static int digit(int code) {
    if (code >= KeyEvent.VK_0 && code <= KeyEvent.VK_9) {
      return code - KeyEvent.VK_0;
    }
    return code >= KeyEvent.VK_NUMPAD0 && code <= KeyEvent.VK_NUMPAD9
        ? code - KeyEvent.VK_NUMPAD0
        : -1;
  }
}
