package firstamp.model;

/**
 * Counts to ampere and volt for one power-up: calibration, with the zero of I, J and V taken off.
 *
 * @param calibration of the probe
 * @param zero taken before arming
 */
public record Scaling(Calibration calibration, Zero zero) {
  /** Above this many counts J is full and says nothing. */
  public static final int FINE_HIGHEST_COUNTS = 1000;

  /** Above this a reading's supply current comes from I. */
  public static final double FINE_HIGHEST_A = 0.350;

  /**
   * Calibrated value of (a mean of) counts of a channel. I, J, V: 0 at the zero taken before
   * arming.
   */
  public double value(Channel channel, double counts) {
    ChannelScale scale = calibration.scale(channel);
    return switch (channel) {
      case I, J, V -> scale.perCount() * (counts - zero.counts(channel));
      default -> scale.value(counts);
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

  /** Supply current of a reading, ampere: from J where J can say it, else from I. */
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
