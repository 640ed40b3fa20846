package firstamp.window;

import java.awt.KeyEventDispatcher;
import java.awt.Window;
import javax.swing.JComponent;

/**
 * One page of the window. The number pad, Enter and the pedal reach all that it asks for. Swing
 * thread only.
 */
interface Page {
  /** Short name, for tests and pictures. */
  String name();

  /** Title of the window while it is in front. */
  String title();

  /** What it shows. */
  JComponent component();

  /** It has come to the front. */
  default void shown() {}

  /** It has left the front; what was typed is kept. */
  default void hidden() {}

  /** About twenty times a second while in front. */
  default void tick(boolean focused) {}

  /** Whether the window may close now; a page that says no asks the person. */
  default boolean mayClose() {
    return true;
  }

  /** Something went wrong in the window: leave nothing switched on. */
  default void failed() {}

  /** It is left for good: closes what it holds. May take seconds, never on the Swing thread. */
  default void end() {}

  /** A number key 1 to 9. */
  default void choose(int number) {}

  /** Enter: goes on to what the page proposes. */
  default void goOn() {}

  /** Key 0 or Escape: back to where the person came from. */
  default void back() {}

  /** Arrow up or down. */
  default void move(int by) {}

  /** Arrow left or right. */
  default void across(int by) {}

  /** Page up or down. */
  default void turn(int by) {}

  /** What its keys do. */
  default KeyEventDispatcher keys(Window window) {
    return new PageKeys(window, this);
  }
}
