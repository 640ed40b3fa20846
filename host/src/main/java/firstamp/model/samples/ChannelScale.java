package firstamp.model.samples;

/**
 * What the counts of one channel mean: value = zero + (full - zero) * counts / 1024.
 *
 * @param zeroBase value at 0 counts, base units of the wire (I, J: microampere; V, R1..R3, M:
 *     microvolt; H: nanovolt)
 * @param fullBase value at 1024 counts, base units
 * @param basePerUnit base units in one ampere or volt
 */
public record ChannelScale(int zeroBase, int fullBase, double basePerUnit) {
  /** Checks that the range is not empty. */
  public ChannelScale {
    if (fullBase == zeroBase) {
      throw new IllegalArgumentException("scale with an empty range: zero = full = " + zeroBase);
    }
    if (!(basePerUnit > 0)) {
      throw new IllegalArgumentException("basePerUnit " + basePerUnit + ", expected above 0");
    }
  }

  /** Value at 0 counts, ampere or volt. */
  public double zero() {
    return zeroBase / basePerUnit;
  }

  /** Value at 1024 counts, ampere or volt. */
  public double full() {
    return fullBase / basePerUnit;
  }

  /** Ampere or volt per count; negative when the channel is inverted. */
  public double perCount() {
    return ((double) fullBase - zeroBase) / 1024 / basePerUnit;
  }

  /** Calibrated value of (a mean of) counts, ampere or volt. */
  public double value(double counts) {
    return zero() + perCount() * counts;
  }

  /** Counts, not rounded and not held to the range, that belong to a value. */
  public double counts(double value) {
    return (value - zero()) / perCount();
  }
}
