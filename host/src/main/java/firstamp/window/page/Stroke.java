package firstamp.window.page;

import java.awt.Component;

/**
 * A key that goes down, once the frame has taken what is its own.
 *
 * @param code of the key, digits of a number pad without its lock already put right
 * @param first false while it only repeats itself
 * @param source what has the focus
 * @param typing whether that takes text
 */
public record Stroke(int code, boolean first, Component source, boolean typing) {
  /** Does it once, however long the key is held. */
  public boolean once(Runnable action) {
    if (first) {
      action.run();
    }
    return true;
  }
}
