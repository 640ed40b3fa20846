package firstamp.emulate;

/**
 * The limiter of the box: it holds the current of the closed switch at a level that falls with the
 * volts across it, slowly, so that long leads do not make it swing.
 *
 * <p>Level and time constant are those of the transistor circuit, simulated at 27 C: 12.0, 10.1 and
 * 4.7 A with 12, 24 and 60 V across the switch, 110 us. A switch that opens before the time that a
 * surge is allowed is the probe's rule; this class only sees how long limiting has lasted.
 */
final class Limiter {
  /** Volts across the closed switch above which limiting is seen. */
  static final double SEEN_V = 3.5;

  private static final double LEVEL_A = 13.8;
  private static final double FOLD_BACK_SIEMENS = 0.152;
  private static final double SLOW_S = 110e-6;

  /** How long limiting may last: 20 ms after closing (from a supply up to 15 V, above), later. */
  private static final double SURGE_WINDOW_S = 0.020;

  private static final double SURGE_S = 0.015;
  private static final double SURGE_OVER_15_V_S = 0.010;
  private static final double HIGH_V = 15;
  private static final double LATER_S = 0.001;

  private double slowV;
  private double closedOnV;
  private boolean holding;
  private boolean seen;
  private double seenSinceS = Double.NaN;

  /** The switch closes with so many volts across it. */
  void closed(double acrossV) {
    slowV = Math.max(0, acrossV);
    closedOnV = slowV;
    holding = false;
    seen = false;
    seenSinceS = Double.NaN;
  }

  /** The current that it lets through now. */
  double ampere() {
    return Math.max(0, LEVEL_A - FOLD_BACK_SIEMENS * slowV);
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
  void step(double seconds, double acrossV, boolean held, double nowS) {
    slowV = (slowV + Math.max(0, acrossV) * seconds / SLOW_S) / (1 + seconds / SLOW_S);
    holding = held;
    seen = held && acrossV > SEEN_V;
    if (!seen) {
      seenSinceS = Double.NaN;
    } else if (Double.isNaN(seenSinceS)) {
      seenSinceS = nowS - seconds;
    }
  }

  /** Whether limiting has lasted longer than a healthy closing needs. */
  boolean tooLong(double sinceClosedS, double nowS) {
    if (!seen) {
      return false;
    }
    double allowedS =
        sinceClosedS > SURGE_WINDOW_S ? LATER_S : closedOnV > HIGH_V ? SURGE_OVER_15_V_S : SURGE_S;
    return nowS - seenSinceS > allowedS;
  }
}
