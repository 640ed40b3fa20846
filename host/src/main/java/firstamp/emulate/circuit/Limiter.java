package firstamp.emulate.circuit;

import firstamp.model.limits.ProbeLimits;

/**
 * The limiter of the box: it holds the current of the closed switch at a level that falls with the
 * volts across it, slowly, so that long leads do not make it swing.
 *
 * <p>Level and time constant are those of the transistor circuit, simulated at 27 C: 12.0, 10.1 and
 * 4.7 A with 12, 24 and 60 V across the switch, 110 us. How long it may last is the probe's rule.
 */
final class Limiter {
  /** Volts across the closed switch above which limiting is seen. */
  static final double SEEN_V = 3.5;

  private static final double FOLD_BACK_SIEMENS = 0.152;
  private static final double SLOW_S = 110e-6;

  private double slowV;
  private boolean holding;
  private boolean seen;

  /** The switch closes with so many volts across it. */
  void closed(double acrossV) {
    slowV = Math.max(0, acrossV);
    holding = false;
    seen = false;
  }

  /** The current that it limits to now. */
  double ampere() {
    return Math.max(0, ProbeLimits.LIMITER_A - FOLD_BACK_SIEMENS * slowV);
  }

  /** Whether it held the current in the last step. */
  boolean holding() {
    return holding;
  }

  /** Whether limiting is seen now. */
  boolean seen() {
    return seen;
  }

  /** What happened in a step. */
  void step(double seconds, double acrossV, boolean held) {
    slowV = (slowV + Math.max(0, acrossV) * seconds / SLOW_S) / (1 + seconds / SLOW_S);
    holding = held;
    seen = held && acrossV > SEEN_V;
  }
}
