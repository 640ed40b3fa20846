package firstamp.analysis.figures;

import firstamp.analysis.statistics.SupplyIntegral;
import firstamp.analysis.statistics.SupplySums;
import firstamp.model.samples.Channel;
import firstamp.model.samples.Reading;
import firstamp.model.samples.Scaling;

/**
 * Peak, inrush I2t and charge of the first second after closing, from the integers of the readings:
 * the same from the raw and from the reduced stream. Not thread-safe.
 */
final class SupplyStart {
  static final int PEAK_READINGS = 10;
  static final int CHARGE_READINGS = 100;
  private static final double SECONDS = 0.01;

  private double peakA;
  private double i2tA2s;
  private SupplySums firstSecond = new SupplySums();
  private boolean clipped;
  private int peakReadings;
  private int chargeReadings;

  SupplyStart copy() {
    SupplyStart copy = new SupplyStart();
    copy.peakA = peakA;
    copy.i2tA2s = i2tA2s;
    copy.firstSecond = firstSecond.copy();
    copy.clipped = clipped;
    copy.peakReadings = peakReadings;
    copy.chargeReadings = chargeReadings;
    return copy;
  }

  /**
   * Takes the reading with this number since closing.
   *
   * @param number from 0
   */
  void add(int number, Reading reading, Scaling scaling) {
    if (number < PEAK_READINGS) {
      peakReadings++;
      peakA = Math.max(peakA, scaling.value(Channel.I, reading.highest(Channel.I)));
      i2tA2s += meanSquare(reading, scaling) * SECONDS;
      clipped |= reading.highest(Channel.I) >= 1023;
    }
    if (number < CHARGE_READINGS) {
      chargeReadings++;
      firstSecond.add(reading, scaling);
    }
  }

  /**
   * Highest conversion of I; null if a reading is missing.
   *
   * @param onReadings begun readings while on
   */
  Double peakA(int onReadings) {
    return complete(peakReadings, PEAK_READINGS, onReadings) ? (Double) peakA : null;
  }

  /** Integral of the current squared over the first 100 ms. */
  Double i2tA2s(int onReadings) {
    return complete(peakReadings, PEAK_READINGS, onReadings) ? (Double) i2tA2s : null;
  }

  /** Integral of the current over the first second. */
  Double chargeC(int onReadings) {
    return complete(chargeReadings, CHARGE_READINGS, onReadings)
        ? (Double) firstSecond.chargeC()
        : null;
  }

  /** What the first second has brought, for how sure its charge is. */
  SupplyIntegral firstSecond() {
    return firstSecond.integral();
  }

  /** Whether the peak is only "at least". */
  boolean clipped() {
    return clipped;
  }

  private static boolean complete(int had, int most, int onReadings) {
    return had > 0 && had >= Math.min(most, onReadings);
  }

  /**
   * Mean of (count - zero) squared of the channel that says the current, times its step squared.
   */
  private static double meanSquare(Reading reading, Scaling scaling) {
    Channel channel = scaling.fine(reading) ? Channel.J : Channel.I;
    double n = channel.conversionsPerReading();
    double zero = scaling.zero().counts(channel);
    double sum = reading.sum(channel);
    double squares = reading.sumOfSquares(channel) - 2 * zero * sum + n * zero * zero;
    double step = scaling.calibration().scale(channel).perCount();
    return Math.max(0, squares) / n * step * step;
  }
}
