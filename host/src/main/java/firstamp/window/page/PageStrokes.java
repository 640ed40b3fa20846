package firstamp.window.page;

import firstamp.window.frame.FrameKeys;

/**
 * The keys of one page. What switches off is never among them: OFF, pedal and what is eaten belong
 * to {@link FrameKeys}.
 */
public interface PageStrokes {
  /** A key goes down; true = it was meant for the page and is eaten. */
  boolean pressed(Stroke stroke);

  /** A key goes up. */
  default void released(int code) {}

  /** The page is left: nothing is held any more. */
  default void stop() {}
}
