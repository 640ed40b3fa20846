package firstamp.emulate.box;

import java.util.SplittableRandom;

/**
 * The meter that a box is calibrated with, and the noise of that calibration's means.
 *
 * @param voltsShare error of its volts range, share of the reading
 * @param ampsShare error of its ampere range
 * @param noiseSeed of the means
 */
public record BenchMeter(double voltsShare, double ampsShare, long noiseSeed) {
  /** Limits of error of a hand-held meter: 0.8 % of volts, 1.5 % of ampere (common practice). */
  private static final double VOLTS_LIMIT = 0.008;

  private static final double AMPS_LIMIT = 0.015;

  static BenchMeter drawn(SplittableRandom random) {
    return new BenchMeter(
        VOLTS_LIMIT * random.nextDouble(-1, 1),
        AMPS_LIMIT * random.nextDouble(-1, 1),
        random.nextLong());
  }
}
