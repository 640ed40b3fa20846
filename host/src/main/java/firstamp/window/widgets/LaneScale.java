package firstamp.window.widgets;

/**
 * Where a value stands in its strip, from 0 (bottom) to 1 (top).
 *
 * <p>A quantity with a window gets a bent scale: the window always takes the middle part of the
 * strip, one width of the window the parts next to it, and all the rest down to zero and up to the
 * top what is left. So "inside" is seen without reading, at whatever volts, a small way out is seen
 * as well, and so is ripple inside the window. Away from zero is up, for negative rails too.
 */
public final class LaneScale {
  private static final double ZERO_AT = 0.08;
  private static final double NEAR_BELOW = 0.22;
  private static final double WINDOW_FROM = 0.42;
  private static final double WINDOW_TO = 0.74;
  private static final double NEAR_ABOVE = 0.92;

  private final double[] values;
  private final double[] places;
  private final double sign;

  private LaneScale(double sign, double[] values, double[] places) {
    this.sign = sign;
    this.values = values;
    this.places = places;
  }

  /**
   * The bent scale of a window; both edges on the same side of zero.
   *
   * @param one edge
   * @param other edge
   */
  public static LaneScale around(double one, double other) {
    double sign = one + other < 0 ? -1 : 1;
    double near = Math.max(0, Math.min(sign * one, sign * other));
    double far = Math.max(sign * one, sign * other);
    double span = Math.max(far - near, 1e-6);
    // A window that begins at zero leaves nothing to bend below it.
    double nearEdge = Math.max(near, 1e-9);
    double below = nearEdge - span > 0 ? nearEdge - span : nearEdge / 2;
    double above = nearEdge + 2 * span;
    double top = above + Math.max(span, far);
    return new LaneScale(
        sign,
        new double[] {-top, 0, below, nearEdge, nearEdge + span, above, top},
        new double[] {0, ZERO_AT, NEAR_BELOW, WINDOW_FROM, WINDOW_TO, NEAR_ABOVE, 1});
  }

  /** An even scale from a value at the bottom to one at the top. */
  public static LaneScale even(double bottom, double top) {
    if (!(top > bottom)) {
      throw new IllegalArgumentException("scale from " + bottom + " to " + top);
    }
    return new LaneScale(1, new double[] {bottom, top}, new double[] {0, 1});
  }

  /** Place of a value; beyond an end it stays at the end. NaN stays NaN. */
  public double place(double value) {
    double v = sign * value;
    if (Double.isNaN(v)) {
      return Double.NaN;
    }
    if (v <= values[0]) {
      return places[0];
    }
    for (int at = 1; at < values.length; at++) {
      if (v <= values[at]) {
        double share = (v - values[at - 1]) / (values[at] - values[at - 1]);
        return places[at - 1] + share * (places[at] - places[at - 1]);
      }
    }
    return places[places.length - 1];
  }

  /** The value at a place; beyond an end that of the end. */
  public double valueAt(double place) {
    if (place <= places[0]) {
      return sign * values[0];
    }
    for (int at = 1; at < places.length; at++) {
      if (place <= places[at]) {
        double share = (place - places[at - 1]) / (places[at] - places[at - 1]);
        return sign * (values[at - 1] + share * (values[at] - values[at - 1]));
      }
    }
    return sign * values[values.length - 1];
  }

  /** A round number that is not smaller, from the row 1, 1.5, 2, 3, 5, 7, 10. */
  public static double roundUp(double value) {
    double decade = Math.pow(10, Math.floor(Math.log10(value)));
    for (double step : new double[] {1, 1.5, 2, 3, 5, 7, 10}) {
      if (step * decade >= value * (1 - 1e-9)) {
        return step * decade;
      }
    }
    return 10 * decade;
  }
}
