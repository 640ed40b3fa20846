package firstamp.sound;

/**
 * A tone whose pitch follows the supply current: heard while the current moves, silent while it is
 * steady.
 *
 * <p>Pitch 220 Hz at 10 mA, 2.5 times higher for ten times the current, 110 to 1760 Hz. Steady
 * means that the mean of the last 0.2 s and that of the last 3 s differ by less than 1.5 %. {@link
 * #current} and {@link #mixInto} may be called from two threads.
 */
final class CurrentTone {
  private static final double LOWEST_HERTZ = 110;
  private static final double HIGHEST_HERTZ = 1760;
  private static final double HERTZ_AT_10_MA = 220;
  private static final double EXPONENT = 0.4;
  private static final double LEAST_A = 0.0005;
  private static final double FAST_MS = 200;
  private static final double SLOW_MS = 3000;
  private static final double MOVES = 0.015;
  private static final double HOLD_MS = 700;
  private static final double LOUDNESS = 0.22;
  private static final double FADE_PER_SAMPLE = 1 / (0.12 * Tune.RATE_HERTZ);

  private double fast = Double.NaN;
  private double slow;
  private double lastMs;
  private double movedMs = Double.NEGATIVE_INFINITY;
  private volatile double hertz = HERTZ_AT_10_MA;
  private volatile boolean audible;
  private double phase;
  private double loudness;
  private double glidingHertz = HERTZ_AT_10_MA;

  /**
   * The current of a reading.
   *
   * @param ampere of the supply
   * @param atMs when, ms; rising
   */
  void current(double ampere, double atMs) {
    double level = Math.log(Math.max(LEAST_A, ampere));
    if (Double.isNaN(fast) || atMs < lastMs) {
      fast = level;
      slow = level;
      movedMs = Double.NEGATIVE_INFINITY;
    } else {
      double step = atMs - lastMs;
      fast += (level - fast) * (1 - Math.exp(-step / FAST_MS));
      slow += (level - slow) * (1 - Math.exp(-step / SLOW_MS));
    }
    lastMs = atMs;
    if (Math.abs(fast - slow) > MOVES) {
      movedMs = atMs;
    }
    hertz = hertz(Math.exp(fast));
    audible = atMs - movedMs <= HOLD_MS;
  }

  /** No current is flowing: silence. */
  void off() {
    audible = false;
    fast = Double.NaN;
  }

  /** Pitch for a current. */
  static double hertz(double ampere) {
    double free = HERTZ_AT_10_MA * Math.pow(Math.max(LEAST_A, ampere) / 0.010, EXPONENT);
    return Math.max(LOWEST_HERTZ, Math.min(HIGHEST_HERTZ, free));
  }

  /** Whether it is heard now, or still fading. */
  boolean sounding() {
    return audible || loudness > 0;
  }

  /** Adds the next stretch of tone; it glides and fades, without a step. */
  void mixInto(short[] pcm) {
    double aim = audible ? LOUDNESS : 0;
    double step = Math.pow(hertz / glidingHertz, 1.0 / pcm.length);
    for (int n = 0; n < pcm.length; n++) {
      double change = Math.max(-FADE_PER_SAMPLE, Math.min(FADE_PER_SAMPLE, aim - loudness));
      loudness += change;
      glidingHertz *= step;
      phase += glidingHertz / Tune.RATE_HERTZ;
      phase -= Math.floor(phase);
      double value = pcm[n] + Short.MAX_VALUE * loudness * Math.sin(2 * Math.PI * phase);
      pcm[n] = (short) Math.max(Short.MIN_VALUE, Math.min(Short.MAX_VALUE, Math.round(value)));
    }
  }
}
