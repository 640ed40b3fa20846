package firstamp.model.samples;

/**
 * Counts to ampere and volt for one power-up: calibration, with the zero of I, J and V taken off.
 *
 * <p>Immutable. Scales are looked up once: every reading asks for several of them.
 */
public final class Scaling {
  /** Above this many counts J is off scale and tells nothing. */
  public static final int FINE_HIGHEST_COUNTS = 1000;

  /** Above this a reading's supply current comes from I. */
  public static final double FINE_HIGHEST_A = 0.350;

  private static final int CHANNELS = 8;

  private final Calibration calibration;
  private final Zero zero;
  private final double[] perCount = new double[CHANNELS];
  private final double[] zeroCounts = new double[CHANNELS];
  private final double[] zeroValue = new double[CHANNELS];

  /**
   * A scaling.
   *
   * @param calibration of the probe
   * @param zero taken before arming
   */
  public Scaling(Calibration calibration, Zero zero) {
    this.calibration = calibration;
    this.zero = zero;
    for (Channel channel : Channel.values()) {
      int number = channel.ordinal();
      ChannelScale scale = calibration.scale(channel);
      perCount[number] = scale.perCount();
      zeroCounts[number] = zero.counts(channel);
      zeroValue[number] = scale.zero();
    }
  }

  /** Calibration of the probe. */
  public Calibration calibration() {
    return calibration;
  }

  /** Zero taken before arming. */
  public Zero zero() {
    return zero;
  }

  /**
   * Calibrated value of (a mean of) counts of a channel. I, J, V: 0 at the zero taken before
   * arming.
   */
  public double value(Channel channel, double counts) {
    int number = channel.ordinal();
    return switch (channel) {
      case I, J, V -> perCount[number] * (counts - zeroCounts[number]);
      default -> zeroValue[number] + perCount[number] * counts;
    };
  }

  /** Mean of a channel over a reading. */
  public double mean(Reading reading, Channel channel) {
    return value(channel, reading.meanCounts(channel));
  }

  /** Whether the supply current of this reading is taken from the fine channel. */
  public boolean fine(Reading reading) {
    return reading.highest(Channel.J) <= FINE_HIGHEST_COUNTS
        && value(Channel.I, reading.highest(Channel.I)) <= FINE_HIGHEST_A;
  }

  /** Supply current of a reading, ampere: from J within its range, else from I. */
  public double supplyA(Reading reading) {
    return mean(reading, fine(reading) ? Channel.J : Channel.I);
  }

  /** Volts on the set side of the switch. */
  public double supplyV(Reading reading) {
    return mean(reading, Channel.V);
  }

  /**
   * Volts of a rail.
   *
   * @param rail 1 to 3
   */
  public double railV(Reading reading, int rail) {
    return mean(reading, Channel.ofRail(rail));
  }
}
