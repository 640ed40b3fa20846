package firstamp.run;

import firstamp.model.ProbeHello;
import firstamp.model.text.Worded;

/** Told how a live run gets on, on the session thread; must not wait. */
public interface RunProgress {
  /** The probe has answered, the power-up is in the log. */
  default void started(ProbeHello hello) {}

  /** Once per turn of the session thread, at least every 20 ms. */
  default void tick() {}

  /** Seconds until the switch closes, once per second. */
  default void countdown(int seconds) {}

  /** Why the countdown does not begin yet, in words; null = it may. */
  default void waiting(Worded words) {}

  /** What the run is doing now. */
  default void step(RunStep step) {}

  /**
   * The answer to a moved limit.
   *
   * @param taken the probe acts on it
   * @param why it is not, null if it does
   */
  default void limitAnswer(LimitMove move, boolean taken, Worded why) {}

  /** What a step of a staged bring-up asks for, or why it stopped. */
  default void bringUp(int step, int of, Worded words) {}

  /** The mode, or the text about it, has changed. */
  default void mode(BenchMode.State state) {}

  /** Health of the probe. */
  default void status(int busyPercent, int droppedConversions) {}
}
