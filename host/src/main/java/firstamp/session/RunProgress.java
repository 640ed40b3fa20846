package firstamp.session;

import firstamp.model.ProbeHello;

/** Told how a live run gets on, on the session thread; must not wait. */
public interface RunProgress {
  /** The probe has answered, the power-up is in the log. */
  default void started(ProbeHello hello) {}

  /** Once per turn of the session thread, at least every 20 ms. */
  default void tick(WatchRun run) {}

  /** Seconds until the switch closes, once per second. */
  default void countdown(int seconds) {}

  /** What the run is doing now. */
  default void step(RunSteps.Step step) {}

  /** Health of the probe. */
  default void status(int busyPercent, int droppedConversions) {}
}
