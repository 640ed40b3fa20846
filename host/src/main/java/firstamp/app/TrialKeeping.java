package firstamp.app;

import firstamp.locate.wire.WireCase;
import firstamp.locate.wire.WireStep;

/** Keeps what was done, and judges trials; never on the Swing thread. */
public interface TrialKeeping {
  /** Keeps the wires. */
  void keep(WireCase wires) throws Exception;

  /**
   * The latest power-up as a trial.
   *
   * @param wires as they stand
   * @param wire that was joined
   * @param place where
   */
  WireStep.Trial judge(WireCase wires, String wire, String place) throws Exception;

  /** The time of a step. */
  long epochMs();
}
