package firstamp.alarm;

/**
 * What the set draws once it is settled, and whether it has come to three times that and stays
 * there without anything having been switched on.
 *
 * <p>Settled is the lowest mean over 1 s. A load that comes on is a step: then the current before
 * it says nothing any more. Speech and music go up and down; a part that runs away goes up. Not
 * thread-safe.
 */
final class GrownCurrent {
  private static final int SECOND = 10;
  private static final int LONG = 50;
  private static final double TIMES = 3;

  /** A load is seen as a step of a quarter, at least 5 mA; common practice, no source. */
  private static final double STEP_SHARE = 0.25;

  private static final double STEP_A = 0.005;

  /** Share of the growth that may be lost again on the way. */
  private static final double FALLS = 0.1;

  private final double[] means = new double[LONG];
  private int next;
  private long taken;
  private double settled = Double.POSITIVE_INFINITY;
  private double lowest = Double.POSITIVE_INFINITY;

  void forget() {
    taken = 0;
    next = 0;
    settled = Double.POSITIVE_INFINITY;
  }

  /** Takes the mean of the next 100 ms. */
  void take(double ampere) {
    means[next] = ampere;
    next = (next + 1) % LONG;
    taken++;
    if (taken < SECOND) {
      return;
    }
    if (taken > SECOND && stepped()) {
      forget();
      return;
    }
    double sum = 0;
    for (int k = 0; k < SECOND; k++) {
      sum += ago(k);
    }
    settled = Math.min(settled, sum / SECOND);
  }

  /** Whether there is a settled current. */
  boolean known() {
    return settled < Double.POSITIVE_INFINITY;
  }

  double settledA() {
    return settled;
  }

  double limitA() {
    return TIMES * settled;
  }

  /** The lowest of the last 5 s, ampere. */
  double lowestA() {
    return lowest;
  }

  /** Whether it has been at three times the settled current or more for 5 s. */
  boolean grown() {
    if (taken < LONG || settled <= 0) {
      return false;
    }
    lowest = Double.POSITIVE_INFINITY;
    double falls = 0;
    for (int k = 0; k < LONG; k++) {
      lowest = Math.min(lowest, ago(k));
      falls += k == 0 ? 0 : Math.max(0, ago(k) - ago(k - 1));
    }
    return lowest >= limitA() && falls <= FALLS * (lowest - settled);
  }

  /** Whether most of what was gained in the last 0.9 s came within 0.2 s, and stays. */
  private boolean stepped() {
    double before = ago(SECOND - 1);
    double since = Double.POSITIVE_INFINITY;
    for (int k = 0; k < SECOND - 2; k++) {
      since = Math.min(since, ago(k));
    }
    double gained = since - before;
    return gained > Math.max(STEP_A, STEP_SHARE * before) && ago(SECOND - 3) - before > gained / 2;
  }

  private double ago(int k) {
    return means[(next - 1 - k + 2 * LONG) % LONG];
  }
}
