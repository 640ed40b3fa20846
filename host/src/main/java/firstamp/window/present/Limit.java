package firstamp.window.present;

import firstamp.model.LimitKind;
import firstamp.window.widgets.LaneScale;

/**
 * A limit drawn in a strip that can be moved.
 *
 * @param kind which one
 * @param rail 1 to 3 for a limit of a rail, else 0
 * @param value now in force, in the unit of the kind
 * @param name as it is said
 * @param scale of its strip
 */
public record Limit(LimitKind kind, int rail, double value, String name, LaneScale scale) {
  /** Whether the other one is the same limit, at whatever value. */
  public boolean same(Limit other) {
    return other != null && kind == other.kind && rail == other.rail;
  }
}
