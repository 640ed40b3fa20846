package firstamp.window.strips;

import firstamp.run.LimitMove;
import firstamp.window.present.Limit;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;

/**
 * A limit that is being moved, by pointer or keys, before anybody is asked for it. Free of Swing;
 * one thread.
 */
final class LimitEditor {
  private static final double STEP = 0.05;

  private Limit held;
  private double value;

  /** Takes hold of a limit. */
  void hold(Limit limit) {
    held = limit;
    value = limit.value();
  }

  /** Takes hold of the limit behind the one held, of the first one; of none behind the last. */
  void next(List<Limit> limits) {
    int at = 0;
    while (held != null && at < limits.size() && !held.same(limits.get(at))) {
      at++;
    }
    int wanted = held == null ? 0 : at + 1;
    if (wanted < limits.size()) {
      hold(limits.get(wanted));
    } else {
      drop();
    }
  }

  /** Moves to a value. */
  void moveTo(double wanted) {
    if (held != null && wanted > 0 && Double.isFinite(wanted)) {
      value = rounded(wanted);
    }
  }

  /** One step up (1) or down (-1), 5 % each. */
  void nudge(int steps) {
    if (held != null) {
      double wanted = value * Math.pow(1 + STEP, steps);
      double next = rounded(wanted);
      // Rounding must not swallow a step.
      value = next == value ? wanted : next;
    }
  }

  /** Two significant digits and a half: as fine as a limit is ever set. */
  static double rounded(double value) {
    double unit = Math.pow(10, Math.floor(Math.log10(value)) - 1) / 2;
    double rounded = Math.round(value / unit) * unit;
    // What counting in steps leaves behind at the sixteenth digit is nobody's wish.
    return new BigDecimal(rounded).round(new MathContext(8)).doubleValue();
  }

  /** Lets go without a change. */
  void drop() {
    held = null;
  }

  /** The wish, and lets go; null if nothing was moved. */
  LimitMove take() {
    Limit limit = held;
    held = null;
    boolean moved = limit != null && Math.abs(value - limit.value()) > 1e-9 * limit.value();
    return moved ? new LimitMove(limit.kind(), limit.rail(), value) : null;
  }

  /** The limit held, null = none. */
  Limit held() {
    return held;
  }

  /** Where it has been moved to. */
  double value() {
    return value;
  }
}
