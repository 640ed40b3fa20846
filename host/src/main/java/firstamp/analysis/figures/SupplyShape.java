package firstamp.analysis.figures;

import firstamp.analysis.statistics.Moments;
import firstamp.model.Summary;

/**
 * What the supply current did, by name.
 *
 * <p>Judged on means of seconds from the third on: against their end by fifths. Thresholds (2 % and
 * 1 mA for still, 5 % for a trend) are common practice, no source.
 *
 * @param kind the shape
 * @param fromA current at the start of what was judged, ampere
 * @param toA current at its end
 * @param perMinute change of the last half per minute, share of the end
 */
public record SupplyShape(Kind kind, double fromA, double toA, double perMinute) {
  private static final int FROM_SECOND = 3;
  private static final int LEAST_SECONDS = 5;
  private static final double STILL_SHARE = 0.02;
  private static final double STILL_A = 0.001;
  private static final double TREND_SHARE = 0.05;
  private static final double SURGE_TIMES = 2;

  /** Shapes. */
  public enum Kind {
    /** Not on long enough to judge. */
    TOO_SHORT,
    /** No surge, then flat. */
    STEADY,
    /** A surge, then flat. */
    SURGE,
    /** Falls slowly: capacitors form. */
    FORMING,
    /** Climbs continuously. */
    CREEP,
    /** Still changes, up and down. */
    MOVING
  }

  /** Shape of a course; null if it never was on. */
  public static SupplyShape of(PowerUpTrend course, Summary.SupplyFigures supply) {
    if (course == null) {
      return null;
    }
    double[] amps = course.ampsFrom(FROM_SECOND);
    if (amps.length < LEAST_SECONDS) {
      return new SupplyShape(Kind.TOO_SHORT, 0, 0, 0);
    }
    double[] fifths = fifths(amps);
    double change = fifths[4] - fifths[0];
    double end = Math.abs(fifths[4]);
    double perMinute = perMinute(amps, course.secondsApart(), end);
    Kind kind = Kind.MOVING;
    if (spread(fifths) <= Math.max(STILL_A, STILL_SHARE * end)) {
      boolean surged =
          supply.inrushPeakA() != null && supply.inrushPeakA() > SURGE_TIMES * fifths[4] + 0.02;
      kind = surged ? Kind.SURGE : Kind.STEADY;
    } else if (change > Math.max(STILL_A, TREND_SHARE * end) && rising(fifths, 1)) {
      kind = Kind.CREEP;
    } else if (-change > Math.max(STILL_A, TREND_SHARE * end) && rising(fifths, -1)) {
      kind = Kind.FORMING;
    }
    return new SupplyShape(kind, fifths[0], fifths[4], perMinute);
  }

  private static double[] fifths(double[] values) {
    double[] fifths = new double[5];
    for (int k = 0; k < 5; k++) {
      int from = values.length * k / 5;
      int to = values.length * (k + 1) / 5;
      double sum = 0;
      for (int i = from; i < to; i++) {
        sum += values[i];
      }
      fifths[k] = sum / (to - from);
    }
    return fifths;
  }

  private static double spread(double[] fifths) {
    double lowest = fifths[0];
    double highest = fifths[0];
    for (double fifth : fifths) {
      lowest = Math.min(lowest, fifth);
      highest = Math.max(highest, fifth);
    }
    return highest - lowest;
  }

  /** Each beyond the one before, and no single one holding over half of the change. */
  private static boolean rising(double[] fifths, int sign) {
    double whole = sign * (fifths[4] - fifths[0]);
    for (int k = 1; k < 5; k++) {
      double part = sign * (fifths[k] - fifths[k - 1]);
      if (part <= 0 || part > whole * (sign > 0 ? 0.5 : 0.8)) {
        return false;
      }
    }
    return true;
  }

  private static double perMinute(double[] amps, int secondsApart, double end) {
    int half = amps.length / 2;
    double first = Moments.of(part(amps, half, amps.length - (half + 1) / 2)).mean();
    double last = Moments.of(part(amps, amps.length - (half + 1) / 2, amps.length)).mean();
    double seconds = Math.max(1, amps.length / 4.0) * secondsApart;
    return end == 0 ? 0 : (last - first) / end * 60 / seconds;
  }

  private static double[] part(double[] values, int from, int to) {
    double[] part = new double[to - from];
    System.arraycopy(values, from, part, 0, part.length);
    return part;
  }
}
