package firstamp.alarm;

import firstamp.alarm.trail.Cusum;
import java.util.Arrays;

/**
 * Whether the lower envelope of the supply current climbs over a stretch of time: speech, music and
 * a motor's switching lie on top of it.
 *
 * <p>The stretch is cut into fifths; of each counts the 10th percentile of its means of 100 ms. One
 * fifth that holds more than half of the rise is a step, unless the rise was getting faster before:
 * that is how a part runs away that heats itself. Not thread-safe.
 */
final class SlowClimb {
  private static final int FIFTHS = 5;
  private static final int PARTS = 25;
  private static final double ENVELOPE = 0.1;

  /** A rise that gets faster has at least a fifth of its last step in the one before. */
  private static final double FASTER = 0.2;

  /** Volts that climb by more explain a current that climbs. */
  private static final double VOLTS_SHARE = 0.02;

  /** Slack and decision interval in standard deviations: the usual pair of {@link Cusum}. */
  private static final double SLACK = 0.5;

  private static final double DECISION = 5;

  /** Mean distance of two neighbours over their standard deviation, 2 / sqrt(pi). */
  private static final double NEIGHBOURS = 1.128;

  /** What the fine current range can tell apart over one part. */
  private static final double FINEST_A = 2e-5;

  private final double[] amperes;
  private final double[] volts;
  private final double[] fifths = new double[FIFTHS];
  private int next;
  private int filled;

  /**
   * Nothing taken yet.
   *
   * @param means of 100 ms that are looked at together, a multiple of {@link #FIFTHS}
   */
  SlowClimb(int means) {
    amperes = new double[means];
    volts = new double[means];
  }

  void forget() {
    filled = 0;
    next = 0;
  }

  /** Takes the mean of the next 100 ms. */
  void take(double ampere, double volt) {
    amperes[next] = ampere;
    volts[next] = volt;
    next = (next + 1) % amperes.length;
    filled = Math.min(amperes.length, filled + 1);
  }

  boolean full() {
    return filled == amperes.length;
  }

  /** How far the envelope rose from the first fifth to the last, ampere. */
  double rise() {
    return fifths[FIFTHS - 1] - fifths[0];
  }

  /** Whether the supply was turned up meanwhile. Volts that sag explain no rising current. */
  boolean voltsClimb() {
    int each = amperes.length / FIFTHS;
    double first = 0;
    double last = 0;
    for (int k = 0; k < each; k++) {
      first += Math.abs(at(volts, k)) / each;
      last += Math.abs(at(volts, volts.length - 1 - k)) / each;
    }
    return last - first > VOLTS_SHARE * last;
  }

  /** Whether it climbs; call it when {@link #full()}. */
  boolean climbs() {
    int each = amperes.length / FIFTHS;
    double[] sorted = new double[each];
    for (int k = 0; k < FIFTHS; k++) {
      for (int n = 0; n < each; n++) {
        sorted[n] = at(amperes, k * each + n);
      }
      Arrays.sort(sorted);
      fifths[k] = sorted[(int) (ENVELOPE * each)];
    }
    boolean rises = rise() > 0;
    boolean step = false;
    boolean faster = true;
    for (int k = 1; k < FIFTHS && rises; k++) {
      double by = fifths[k] - fifths[k - 1];
      rises = by > 0;
      step |= by > rise() / 2;
      faster &= k == 1 || by > fifths[k - 1] - fifths[k - 2];
    }
    double last = fifths[FIFTHS - 1] - fifths[FIFTHS - 2];
    faster &= fifths[FIFTHS - 2] - fifths[FIFTHS - 3] >= FASTER * last;
    return rises && (!step || faster) && beyondScatter();
  }

  /** Scatter is taken from neighbours, which a slow climb hardly touches. */
  private boolean beyondScatter() {
    int count = Math.min(PARTS, amperes.length);
    int each = amperes.length / count;
    double[] parts = new double[count];
    double apart = 0;
    for (int k = 0; k < count; k++) {
      parts[k] = at(amperes, k * each);
      for (int n = 1; n < each; n++) {
        parts[k] = Math.min(parts[k], at(amperes, k * each + n));
      }
      apart += k == 0 ? 0 : Math.abs(parts[k] - parts[k - 1]);
    }
    double deviation = Math.max(FINEST_A, apart / (count - 1) / NEIGHBOURS);
    Cusum sums = new Cusum(SLACK, DECISION);
    for (double part : parts) {
      sums.take((part - fifths[0]) / deviation);
    }
    return sums.above();
  }

  /** The k-th oldest. */
  private double at(double[] values, int k) {
    return values[(next + k) % values.length];
  }
}
