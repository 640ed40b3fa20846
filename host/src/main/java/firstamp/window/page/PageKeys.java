package firstamp.window.page;

import java.awt.event.KeyEvent;
import javax.swing.JComboBox;
import javax.swing.JTextArea;
import javax.swing.SwingUtilities;

/**
 * Keys of a page: digits choose, Enter does what the page proposes, 0 and Escape go back; the space
 * bar presses what has the focus. Where a text is being typed, digits are text; no key acts twice
 * while it is held down.
 */
public final class PageKeys implements PageStrokes {
  private final Page page;

  public PageKeys(Page page) {
    this.page = page;
  }

  @Override
  public boolean pressed(Stroke stroke) {
    switch (stroke.code()) {
      case KeyEvent.VK_ENTER -> {
        return enter(stroke);
      }
      case KeyEvent.VK_ESCAPE -> stroke.once(page::back);
      case KeyEvent.VK_UP, KeyEvent.VK_KP_UP, KeyEvent.VK_DOWN, KeyEvent.VK_KP_DOWN -> {
        if (stroke.typing() || box(stroke) != null) {
          return false;
        }
        boolean up = stroke.code() == KeyEvent.VK_UP || stroke.code() == KeyEvent.VK_KP_UP;
        page.move(up ? -1 : 1);
      }
      case KeyEvent.VK_LEFT, KeyEvent.VK_KP_LEFT, KeyEvent.VK_RIGHT, KeyEvent.VK_KP_RIGHT -> {
        if (stroke.typing()) {
          return false;
        }
        boolean left = stroke.code() == KeyEvent.VK_LEFT || stroke.code() == KeyEvent.VK_KP_LEFT;
        page.across(left ? -1 : 1);
      }
      case KeyEvent.VK_PAGE_UP -> page.turn(-1);
      case KeyEvent.VK_PAGE_DOWN -> page.turn(1);
      default -> {
        int digit = digit(stroke.code());
        if (stroke.typing() || digit < 0) {
          return false;
        }
        return stroke.once(digit == 0 ? page::back : () -> page.choose(digit));
      }
    }
    return true;
  }

  /**
   * Enter does what the button says that names it, whatever has the focus. In a list that is open
   * it chooses and closes the list; the next Enter continues.
   */
  private boolean enter(Stroke stroke) {
    JComboBox<?> box = box(stroke);
    boolean open = box != null && box.isPopupVisible();
    if (open || stroke.source() instanceof JTextArea && stroke.typing()) {
      return false;
    }
    return stroke.once(page::goOn);
  }

  /** The box with a list that has the focus, also where its text can be typed; null = none. */
  private static JComboBox<?> box(Stroke stroke) {
    return stroke.source() instanceof JComboBox<?> itself
        ? itself
        : (JComboBox<?>) SwingUtilities.getAncestorOfClass(JComboBox.class, stroke.source());
  }

  /**
   * The key, with the two that answer questions taken as digits on a number pad whose lock is off:
   * nobody looks at that lamp with both hands on clips.
   */
  public static int code(KeyEvent event) {
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
  public static int digit(int code) {
    if (code >= KeyEvent.VK_0 && code <= KeyEvent.VK_9) {
      return code - KeyEvent.VK_0;
    }
    return code >= KeyEvent.VK_NUMPAD0 && code <= KeyEvent.VK_NUMPAD9
        ? code - KeyEvent.VK_NUMPAD0
        : -1;
  }
}
