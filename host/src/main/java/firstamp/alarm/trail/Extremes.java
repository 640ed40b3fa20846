package firstamp.alarm.trail;

/**
 * Lowest and highest of the latest values of a trail, kept from reading to reading: all are looked
 * at again only when the one that was lowest or highest has become too old.
 *
 * <p>A NaN among the values makes both NaN. Not thread-safe.
 */
public final class Extremes {
  private static final long NONE = Long.MIN_VALUE;

  private final History trail;
  private long begin;
  private long end = -1;
  private double lowest;
  private double highest;
  private long lowestAt;
  private long highestAt;
  private long missingAt = NONE;

  public Extremes(History trail) {
    this.trail = trail;
  }

  /** Looks at the latest values, this many. */
  public void over(int readings) {
    long from = trail.count() - readings;
    if (from < begin || end < from || lowestAt < from || highestAt < from) {
      lowest = Double.POSITIVE_INFINITY;
      highest = Double.NEGATIVE_INFINITY;
      end = from;
    }
    begin = from;
    for (; end < trail.count(); end++) {
      take(end);
    }
    if (missingAt < from) {
      missingAt = NONE;
    }
  }

  private void take(long number) {
    double value = trail.ago((int) (trail.count() - 1 - number));
    if (Double.isNaN(value)) {
      missingAt = number;
    }
    if (value <= lowest) {
      lowest = value;
      lowestAt = number;
    }
    if (value >= highest) {
      highest = value;
      highestAt = number;
    }
  }

  public double lowest() {
    return missingAt == NONE ? lowest : Double.NaN;
  }

  public double highest() {
    return missingAt == NONE ? highest : Double.NaN;
  }
}
