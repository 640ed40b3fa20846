package firstamp.run;

import firstamp.model.Alarm;
import firstamp.model.ProbeHello;
import firstamp.model.text.Worded;
import firstamp.pipeline.PlannedSettings;
import firstamp.pipeline.StreamSink;

/**
 * Keeps the stream of one live run, and what came out of it. Called on the session thread; never
 * waits for the disk.
 */
public interface Recorder extends StreamSink {
  /** The probe has answered: the power-up begins. */
  void begin(ProbeHello hello, PlannedSettings settings);

  /** An alarm was raised or changed its state. */
  void alarm(Alarm alarm);

  /** Waits until there is room; only for a probe that runs faster than the clock. */
  void awaitRoom();

  /** Rate and points of the clock fit. */
  void clock(double slowPpm, long points, long probeMicros);

  /**
   * The sentence about a change between logging and not logging since the last call; null = none.
   */
  Worded stateChange();

  /** Whether the log is being written. */
  boolean logging();

  /** Waits until all so far is in the log, or cannot be; the switch is open by then. */
  default void settle() {}

  /** Why it is not being written and what to do, whole sentences; null = it is. */
  default Worded trouble() {
    return null;
  }
}
