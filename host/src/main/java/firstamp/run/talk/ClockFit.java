package firstamp.run.talk;

/**
 * Fits the probe's clock to the computer's: a ceramic resonator is off by up to 0.5 %.
 *
 * <p>Of each second the frame with the least delay is kept; a line through these points by least
 * squares gives rate and offset. Until there are two, the probe's clock is taken as exact. Not
 * thread-safe.
 */
public final class ClockFit {
  private static final long WINDOW_MICROS = 1_000_000;

  private boolean started;
  private long originMicros;
  private long originNanos;
  private long windowEndMicros;
  private double bestDelay;
  private double bestX;
  private double bestY;
  private long points;
  private double sumX;
  private double sumY;
  private double sumXx;
  private double sumXy;
  private long latestMicros;
  private long latestNanos;

  /**
   * A frame arrived.
   *
   * @param probeMicros probe time of its end
   * @param hostNanos the host's clock at arrival
   */
  void add(long probeMicros, long hostNanos) {
    if (!started) {
      started = true;
      originMicros = probeMicros;
      originNanos = hostNanos;
      windowEndMicros = probeMicros + WINDOW_MICROS;
      bestDelay = Double.POSITIVE_INFINITY;
    }
    latestMicros = probeMicros;
    latestNanos = hostNanos;
    double x = probeMicros - originMicros;
    double y = (hostNanos - originNanos) / 1000.0;
    double delay = y - x * rate();
    if (delay < bestDelay) {
      bestDelay = delay;
      bestX = x;
      bestY = y;
    }
    if (probeMicros >= windowEndMicros) {
      closeWindow(probeMicros);
    }
  }

  private void closeWindow(long probeMicros) {
    points++;
    sumX += bestX;
    sumY += bestY;
    sumXx += bestX * bestX;
    sumXy += bestX * bestY;
    windowEndMicros = probeMicros + WINDOW_MICROS;
    bestDelay = Double.POSITIVE_INFINITY;
  }

  /** Seconds of the computer in one second of the probe; 1 until two seconds have been seen. */
  double rate() {
    double spread = points * sumXx - sumX * sumX;
    return points < 2 || spread <= 0 ? 1 : (points * sumXy - sumX * sumY) / spread;
  }

  /** By how many parts per million the probe's clock is slow (positive) against the computer's. */
  public double slowPpm() {
    return (rate() - 1) * 1e6;
  }

  /** Points in the fit. */
  public long points() {
    return points;
  }

  /** Probe time that belongs to a time of the computer, from the newest frame on. */
  public long probeMicrosAt(long hostNanos) {
    return started ? latestMicros + Math.round((hostNanos - latestNanos) / 1000.0 / rate()) : 0;
  }

  /** The probe was restarted: its clock starts again. */
  public void reset() {
    started = false;
    points = 0;
    sumX = 0;
    sumY = 0;
    sumXx = 0;
    sumXy = 0;
  }
}
