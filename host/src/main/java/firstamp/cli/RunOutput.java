package firstamp.cli;

import firstamp.model.ProbeHello;
import firstamp.model.Summary;
import firstamp.session.ChainListener;

/** What a headless run prints: JSON lines for scripts, or sentences for people. */
interface RunOutput extends ChainListener {
  /** The power-up is in the log, the probe has answered. */
  void started(Integer powerUp, String uuid, String sheet, ProbeHello hello, boolean observe);

  /** Seconds until the switch closes. */
  void countdown(int seconds);

  /** The end. */
  void summary(Summary summary);

  /** Whether a person reads along, who wants the verdict at the end. */
  default boolean forPeople() {
    return false;
  }
}
