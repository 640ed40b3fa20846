package firstamp.window.frame;

import firstamp.window.page.PageKeys;
import firstamp.window.page.PageStrokes;
import firstamp.window.page.Stroke;
import firstamp.window.watch.Pedal;
import java.awt.Component;
import java.awt.KeyEventDispatcher;
import java.awt.Window;
import java.awt.event.KeyEvent;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import javax.swing.SwingUtilities;
import javax.swing.text.JTextComponent;

/**
 * The one place where keys come in; what switches off comes before everything else, whatever has
 * the focus.
 *
 * <p>A stroke that did something is eaten whole: its repeats, what it would type and its release
 * (buttons act on the release of the space bar). While something can be switched off no field takes
 * letters.
 */
public final class FrameKeys implements KeyEventDispatcher {
  /** The key that a pedal on the keyboard's line sends. */
  public static final int PEDAL = KeyEvent.VK_F8;

  /** A held key that repeats itself as release and press comes back within this time. */
  static final long REPEAT_MILLIS = 90;

  private static final String FIGURES = "0123456789.,-\b\u007f";
  private static final Set<Integer> MOVES =
      Set.of(
          KeyEvent.VK_LEFT,
          KeyEvent.VK_RIGHT,
          KeyEvent.VK_KP_LEFT,
          KeyEvent.VK_KP_RIGHT,
          KeyEvent.VK_UP,
          KeyEvent.VK_DOWN,
          KeyEvent.VK_KP_UP,
          KeyEvent.VK_KP_DOWN,
          KeyEvent.VK_HOME,
          KeyEvent.VK_END,
          KeyEvent.VK_BACK_SPACE,
          KeyEvent.VK_DELETE,
          KeyEvent.VK_ENTER,
          KeyEvent.VK_TAB,
          KeyEvent.VK_PERIOD,
          KeyEvent.VK_DECIMAL,
          KeyEvent.VK_COMMA,
          KeyEvent.VK_SEPARATOR,
          KeyEvent.VK_MINUS,
          KeyEvent.VK_SUBTRACT);
  private static final Set<Integer> MODIFIERS =
      Set.of(
          KeyEvent.VK_SHIFT,
          KeyEvent.VK_CONTROL,
          KeyEvent.VK_ALT,
          KeyEvent.VK_ALT_GRAPH,
          KeyEvent.VK_META,
          KeyEvent.VK_CAPS_LOCK,
          KeyEvent.VK_NUM_LOCK);

  private final Window window;
  private final Hands hands;
  private final Pedal pedal;
  private final Set<Integer> down = new HashSet<>();
  private final Set<Integer> eaten = new HashSet<>();
  private final Map<Integer, Long> upMillis = new HashMap<>();
  private final Set<Integer> framed = new HashSet<>();
  private boolean eatTyped;

  /** What the keys of the frame can ask for and must know. */
  interface Hands extends Pedal.Foot {
    /** Whether OFF opens something, or keeps something from closing. */
    boolean armed();

    /** Whether it was switched off so lately that a key may be meant for what was there before. */
    boolean dead();

    /** A set word for the mark that was just put; false if none waits for one. */
    boolean word(int number);

    /** Keys of the page in front. */
    PageStrokes page();

    /** A key of this window: somebody is there, also where the key is eaten. */
    void touched();
  }

  FrameKeys(Window window, Hands hands, Pedal pedal) {
    this.window = window;
    this.hands = hands;
    this.pedal = pedal;
  }

  @Override
  public boolean dispatchKeyEvent(KeyEvent event) {
    Component source = event.getComponent();
    if (!ours(source) && !begun(event)) {
      return false;
    }
    hands.touched();
    if (PageKeys.code(event) == PEDAL) {
      pedal(event);
      return true;
    }
    return switch (event.getID()) {
      case KeyEvent.KEY_PRESSED -> press(event, source);
      case KeyEvent.KEY_RELEASED -> release(event);
      default -> eatTyped || hands.armed() && typing(source) && !figure(event.getKeyChar());
    };
  }

  /** The window, and what belongs to it: lists that open, cards on top. */
  private boolean ours(Component source) {
    Component at = source;
    while (at != null && at != window) {
      at = at instanceof Window other ? other.getOwner() : SwingUtilities.getWindowAncestor(at);
    }
    return at == window;
  }

  /** The rest of a stroke that was eaten is eaten too, also where its page has gone meanwhile. */
  private boolean begun(KeyEvent event) {
    return event.getID() == KeyEvent.KEY_TYPED
        ? eatTyped
        : eaten.contains(PageKeys.code(event)) || PageKeys.code(event) == PEDAL && pedal.isDown();
  }

  private void pedal(KeyEvent event) {
    if (event.getID() == KeyEvent.KEY_PRESSED) {
      pedal.pressed(event.getWhen());
    } else if (event.getID() == KeyEvent.KEY_RELEASED) {
      pedal.released(event.getWhen());
    }
  }

  private boolean press(KeyEvent event, Component source) {
    int code = PageKeys.code(event);
    boolean first = down.add(code);
    if (stillSwitchesOff(event, code)) {
      eatTyped = true;
      return true;
    }
    boolean mine = frame(event, code, first, source);
    boolean did = mine || page(event, new Stroke(code, first, source, typing(source)));
    if (did) {
      eaten.add(code);
    }
    if (mine) {
      framed.add(code);
    }
    eatTyped = did;
    return did;
  }

  /** A key that did something for the frame is eaten whole, also where it comes back at once. */
  private boolean stillSwitchesOff(KeyEvent event, int code) {
    Long up = upMillis.remove(code);
    boolean back = up == null || event.getWhen() - up <= REPEAT_MILLIS;
    boolean still = framed.contains(code) && back;
    if (!still) {
      framed.remove(code);
    } else {
      eaten.add(code);
    }
    return still;
  }

  /** What is the frame's alone. */
  private boolean frame(KeyEvent event, int code, boolean first, Component source) {
    if (MODIFIERS.contains(code)) {
      return false;
    }
    if (hands.armed() && off(code, first)) {
      hands.off();
      return true;
    }
    if (hands.dead()) {
      return true;
    }
    if (!hands.armed()) {
      return false;
    }
    if (commanded(event)) {
      // Pasting puts letters into a field too.
      return typing(source);
    }
    return mark(code, first, source) || typing(source) && !allowed(code);
  }

  /** Any key stops a countdown. */
  private boolean off(int code, boolean first) {
    return code == KeyEvent.VK_SPACE || code == KeyEvent.VK_ESCAPE || first && hands.counting();
  }

  private boolean mark(int code, boolean first, Component source) {
    boolean asked = code == KeyEvent.VK_M || code == KeyEvent.VK_PLUS || code == KeyEvent.VK_ADD;
    if (asked && first) {
      hands.mark();
    }
    int digit = PageKeys.digit(code);
    return asked || first && digit > 0 && !typing(source) && hands.word(digit);
  }

  private boolean page(KeyEvent event, Stroke stroke) {
    return !commanded(event) && stroke.code() != KeyEvent.VK_TAB && hands.page().pressed(stroke);
  }

  private static boolean commanded(KeyEvent event) {
    return event.isControlDown() || event.isAltDown() || event.isMetaDown();
  }

  private boolean release(KeyEvent event) {
    int code = PageKeys.code(event);
    down.remove(code);
    upMillis.put(code, event.getWhen());
    hands.page().released(code);
    return eaten.remove(code);
  }

  /** The window has lost the keyboard: what is held is not known any more. */
  void lost() {
    down.clear();
    eaten.clear();
    framed.clear();
    upMillis.clear();
    pedal.lost();
    hands.page().stop();
  }

  /** The pedal is judged by time. */
  public void tick(long millis) {
    pedal.tick(millis);
  }

  static boolean typing(Component source) {
    return source instanceof JTextComponent text && text.isEditable() && text.isEnabled();
  }

  private static boolean figure(char letter) {
    return FIGURES.indexOf(letter) >= 0 || letter == '\n' || letter == '\t';
  }

  private static boolean allowed(int code) {
    return PageKeys.digit(code) >= 0 || MOVES.contains(code);
  }
}
