package firstamp.run.calibration;

import firstamp.model.samples.Calibration;
import firstamp.model.samples.Channel;
import firstamp.protocol.values.LookParameters;
import firstamp.protocol.values.TripLimits;

/** How the probe is set while a resistor and no set is on the set terminals. */
final class Resistor {
  /** The look path bears no more (its resistor). */
  private static final double HIGHEST_V = 30;

  private static final double LOWEST_V = 1;
  private static final int HIGHEST_I_COUNTS = 1020;
  private static final int MAX_LOOK_MS = 500;

  private Resistor() {}

  /**
   * The look.
   *
   * @param skip 10 ohm at the 3 V of the current step is a short to the look (under two counts of
   *     V): there the limits alone watch
   */
  static LookParameters look(Calibration calibration, double lookOhm, boolean skip) {
    double stepV = Math.abs(calibration.scale(Channel.V).perCount());
    double perOhm = 256 * Math.abs(calibration.scale(Channel.J).perCount()) / stepV;
    return new LookParameters(
        skip,
        MAX_LOOK_MS,
        whole(lookOhm * perOhm, 65_535),
        whole(3 * perOhm, 65_535),
        whole(30 * perOhm, 65_535),
        whole(LOWEST_V / stepV, 1023),
        whole(HIGHEST_V / stepV, 1023));
  }

  /** Everything over this many ampere trips, at once. */
  static TripLimits limits(Calibration calibration, double limitA) {
    int counts = (int) Math.round(limitA / Math.abs(calibration.scale(Channel.I).perCount()));
    int held = Math.max(4, Math.min(HIGHEST_I_COUNTS, counts));
    return TripLimits.builder().inrush(0, 0).running(held, 0).silenceMillis(1000).build();
  }

  private static int whole(double value, int most) {
    return (int) Math.max(1, Math.min(most, Math.round(value)));
  }
}
