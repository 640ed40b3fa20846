package firstamp.model.samples;

/**
 * What I, J and V read with the switch open, taken by the probe before each arming.
 *
 * @param sixteenthsI zero of I, 1/16 count
 * @param sixteenthsJ zero of J, 1/16 count
 * @param sixteenthsV zero of V, 1/16 count
 */
public record Zero(int sixteenthsI, int sixteenthsJ, int sixteenthsV) {
  /** No offset on any channel. */
  public static final Zero NONE = new Zero(0, 0, 0);

  /** Zero in counts; 0 for the channels whose calibration alone gives the zero. */
  public double counts(Channel channel) {
    return switch (channel) {
      case I -> sixteenthsI / 16.0;
      case J -> sixteenthsJ / 16.0;
      case V -> sixteenthsV / 16.0;
      default -> 0;
    };
  }
}
