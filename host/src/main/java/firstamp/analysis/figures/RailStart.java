package firstamp.analysis.figures;

import firstamp.analysis.statistics.FirstOrderFit;
import firstamp.model.samples.ChannelScale;
import java.util.Arrays;

/**
 * The first seconds of a rail after closing: conversions at 1 kHz for one second, readings for ten.
 *
 * <p>For the fit of one time constant. Not thread-safe.
 */
final class RailStart {
  static final int CONVERSIONS = 1000;
  static final int READINGS = 1000;
  private static final short MISSING = -1;
  private static final double MOST_MISFIT = 0.05;

  private final short[] conversions = new short[CONVERSIONS];
  private final short[] readingSums = new short[READINGS];

  RailStart() {
    clear();
  }

  void clear() {
    Arrays.fill(conversions, MISSING);
    Arrays.fill(readingSums, MISSING);
  }

  /** Takes the conversion with this number since closing. */
  void conversion(int number, int counts) {
    conversions[number] = (short) counts;
  }

  /** Takes the reading with this number since closing, 0 to 999. */
  void reading(int number, int sum) {
    readingSums[number] = (short) sum;
  }

  /** Whether a fit describes the rise: the scatter about the curve is under 5 % of it. */
  static boolean describes(FirstOrderFit fit) {
    return fit != null && fit.misfit() <= MOST_MISFIT;
  }

  /**
   * One time constant fitted to the rise, in volts and seconds; null where there is none: the rail
   * hardly moves, or data are missing. Whether it describes the rise is another question.
   *
   * @param scale of the rail
   * @param finalV where it ends
   * @param onReadings readings while on
   * @param firstOffsetSeconds start of conversion 0 after closing
   */
  FirstOrderFit fit(ChannelScale scale, double finalV, int onReadings, double firstOffsetSeconds) {
    int readings = Math.min(onReadings, READINGS);
    double step = Math.abs(scale.perCount());
    int reached = reached(scale, finalV, readings);
    if (reached < 0 || Math.abs(finalV - value(scale, 0)) < 10 * step) {
      return null;
    }
    // Six time constants hold all but 0.25 % of the rise; more only weighs what comes after it.
    double seconds = Math.max(0.05, 6 * (reached + 1) * 0.01);
    FirstOrderFit fit = seconds <= 1 ? fast(scale, seconds, readings, firstOffsetSeconds) : null;
    if (fit == null) {
      fit = slow(scale, seconds, readings);
    }
    return fit != null && fit.tau() < seconds ? fit : null;
  }

  private double value(ChannelScale scale, int reading) {
    return scale.value(readingSums[reading] / 10.0);
  }

  /** First reading past 63.2 % of the rise, -1 if data are missing before. */
  private int reached(ChannelScale scale, double finalV, int readings) {
    if (readings == 0 || readingSums[0] == MISSING) {
      return -1;
    }
    double begin = conversions[0] == MISSING ? value(scale, 0) : scale.value(conversions[0]);
    double level = begin + 0.632 * (finalV - begin);
    for (int k = 0; k < readings; k++) {
      if (readingSums[k] == MISSING) {
        return -1;
      }
      if (finalV > begin ? value(scale, k) >= level : value(scale, k) <= level) {
        return k;
      }
    }
    return -1;
  }

  private FirstOrderFit fast(
      ChannelScale scale, double seconds, int readings, double firstOffsetSeconds) {
    int count = Math.min((int) Math.round(seconds * CONVERSIONS), readings * 10);
    count = Math.min(count, CONVERSIONS);
    double[] x = new double[count];
    double[] y = new double[count];
    for (int k = 0; k < count; k++) {
      if (conversions[k] == MISSING) {
        return null;
      }
      x[k] = firstOffsetSeconds + k * 0.001;
      y[k] = scale.value(conversions[k]);
    }
    return FirstOrderFit.of(x, y);
  }

  private FirstOrderFit slow(ChannelScale scale, double seconds, int readings) {
    int count = Math.min((int) Math.round(seconds * 100), readings);
    double[] x = new double[count];
    double[] y = new double[count];
    for (int k = 0; k < count; k++) {
      if (readingSums[k] == MISSING) {
        return null;
      }
      x[k] = (k + 0.5) * 0.01;
      y[k] = value(scale, k);
    }
    return FirstOrderFit.of(x, y);
  }
}
