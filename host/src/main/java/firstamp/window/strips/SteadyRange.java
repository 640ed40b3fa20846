package firstamp.window.strips;

import firstamp.window.widgets.LaneScale;

/**
 * Top of a scale that does not jump about: it grows at once, and shrinks when less than half is
 * used. Mutable, one thread.
 */
final class SteadyRange {
  private final double least;
  private double top;

  SteadyRange(double least) {
    this.least = least;
    this.top = least;
  }

  /** The top for a highest value. */
  double topFor(double highest) {
    double needed = Math.max(least, highest * 1.12);
    if (needed > top || needed < top * 0.45) {
      top = LaneScale.roundUp(needed);
    }
    return top;
  }
}
