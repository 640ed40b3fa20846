package firstamp.analysis.statistics;

import firstamp.analysis.statistics.Uncertainty.Summed;
import firstamp.model.samples.Channel;
import firstamp.model.samples.Reading;
import firstamp.model.samples.Scaling;

/** Adds up charge and energy of readings, range by range. Not thread-safe. */
public final class SupplySums {
  private static final double SECONDS = 0.01;

  /** Lowest to highest of a reading that is no more than noise, counts. */
  private static final int STEADY_COUNTS = 4;

  private final double[] fine = new double[6];
  private final double[] coarse = new double[6];
  private double uneven;

  public SupplySums copy() {
    SupplySums copy = new SupplySums();
    System.arraycopy(fine, 0, copy.fine, 0, fine.length);
    System.arraycopy(coarse, 0, copy.coarse, 0, coarse.length);
    copy.uneven = uneven;
    return copy;
  }

  public void add(Reading reading, Scaling scaling) {
    double amps = scaling.supplyA(reading);
    double volts = scaling.supplyV(reading);
    double cube = Math.abs(amps * amps * amps);
    double[] sums = scaling.fine(reading) ? fine : coarse;
    sums[0] += amps * SECONDS;
    sums[1] += cube * SECONDS;
    sums[2] += SECONDS;
    sums[3] += amps * volts * SECONDS;
    sums[4] += cube * Math.abs(volts) * SECONDS;
    sums[5] += Math.abs(volts) * SECONDS;
    uneven += uneven(reading, scaling) * SECONDS;
  }

  /** The mean of a product is within half of one range times half of the other. */
  private static double uneven(Reading reading, Scaling scaling) {
    double amps = range(reading, scaling, scaling.fine(reading) ? Channel.J : Channel.I);
    double volts = range(reading, scaling, Channel.V);
    return amps * volts / 4;
  }

  private static double range(Reading reading, Scaling scaling, Channel channel) {
    int counts = reading.highest(channel) - reading.lowest(channel);
    return counts <= STEADY_COUNTS
        ? 0
        : counts * Math.abs(scaling.calibration().scale(channel).perCount());
  }

  public double chargeC() {
    return fine[0] + coarse[0];
  }

  public SupplyIntegral integral() {
    return new SupplyIntegral(
        chargeC(),
        fine[3] + coarse[3],
        charge(Channel.J, fine),
        charge(Channel.I, coarse),
        energy(Channel.J, fine),
        energy(Channel.I, coarse),
        uneven);
  }

  private static Summed charge(Channel channel, double[] sums) {
    return new Summed(channel, sums[0], sums[1], sums[2]);
  }

  private static Summed energy(Channel channel, double[] sums) {
    return new Summed(channel, sums[3], sums[4], sums[5]);
  }
}
