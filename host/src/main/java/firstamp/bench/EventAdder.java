package firstamp.bench;

import firstamp.log.LogException;
import firstamp.model.ProbeEvent;

/** Adds an event to a power-up in the log. */
@FunctionalInterface
public interface EventAdder {
  /**
   * Adds it; called on the replay's own thread.
   *
   * @throws LogException it could not be written
   */
  void add(ProbeEvent event) throws LogException;
}
