package firstamp.emulate.box;

import firstamp.protocol.values.ChannelScale;

/**
 * What one input of a box really does: counts = floor(max(lowest, x + bow) + 0.5 + noise) with x
 * from the scale, and a bow of 4 bow x/1024 (1 - x/1024).
 *
 * @param scale value at 0 and at 1024 counts, base units of the wire
 * @param bowCounts integral non-linearity in the middle of the range
 * @param lowestCounts the lowest that its amplifier can give; minus infinity = any
 */
public record BoxInput(ChannelScale scale, double bowCounts, double lowestCounts) {
  private static final double FULL_COUNTS = 1024;

  /** A straight line without an end. */
  public static BoxInput exact(ChannelScale scale) {
    return new BoxInput(scale, 0, Double.NEGATIVE_INFINITY);
  }

  /**
   * What the converter is given, counts, not rounded and not held to its range.
   *
   * @param base value in base units of the wire
   */
  public double counts(double base) {
    double share = (base - scale.zero()) / ((double) scale.full() - scale.zero());
    double straight = FULL_COUNTS * share + 4 * bowCounts * share * (1 - share);
    return Math.max(lowestCounts, straight);
  }
}
