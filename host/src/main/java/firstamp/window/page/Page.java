package firstamp.window.page;

import firstamp.bench.BenchSession;
import javax.swing.JComponent;

/**
 * One page of the window. Number pad and Enter reach all that it asks for. While a switch is closed
 * or may close the window's frame is round it, with state, figures and OFF; a page knows nothing of
 * that and cannot be without it. Swing thread only.
 */
public interface Page {
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

  /** What its keys do; OFF, the pedal and what switches off are the frame's. */
  default PageStrokes strokes() {
    return new PageKeys(this);
  }

  /** The session whose state the frame shows also when nothing is on; null = none. */
  default BenchSession session() {
    return null;
  }

  /** What else lies under OFF; null = nothing. */
  default JComponent controls() {
    return null;
  }

  /** What lies at the right of the sentence; null = nothing. */
  default JComponent sentenceKeys() {
    return null;
  }
}
