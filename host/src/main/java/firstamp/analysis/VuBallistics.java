package firstamp.analysis;

/**
 * What a needle of volume units shows: the mean of the full-wave rectified signal, scaled for a
 * sine, through a movement that reaches 99 % in 300 ms and swings 1.25 % over (ANSI C16.5-1942 /
 * IEC 60268-17 as told at second hand: 99 % in 300 ms, 1 to 1.5 % over; the second-order model with
 * zeta 0.81272 and 13.5119 rad/s is worked out from these two).
 *
 * <p>Not thread-safe.
 */
public final class VuBallistics {
  /** Reading of 0: +4 dBu, 1.228 V rms of a sine. */
  public static final double ZERO_V = Math.sqrt(0.6) * StrictMath.pow(10, 0.2);

  private static final double ZETA = 0.81272;
  private static final double OMEGA = 13.5119;
  private static final double FORM_FACTOR = StrictMath.PI / (2 * Math.sqrt(2));

  private final double fromPlace;
  private final double fromSpeed;
  private final double placeToSpeed;
  private final double speedToSpeed;
  private final double gainPlace;
  private final double gainSpeed;
  private double place;
  private double speed;

  /**
   * A needle at rest at 0.
   *
   * @param samplesPerSecond rate of {@link #put(double)}
   */
  public VuBallistics(double samplesPerSecond) {
    // Exact step of x'' + 2 zeta w x' + w^2 x = w^2 u over one sample with u held.
    double t = 1 / samplesPerSecond;
    double decay = ZETA * OMEGA;
    double damped = OMEGA * Math.sqrt(1 - ZETA * ZETA);
    double e = StrictMath.exp(-decay * t);
    double c = StrictMath.cos(damped * t);
    double s = StrictMath.sin(damped * t) / damped;
    fromPlace = e * (c + decay * s);
    fromSpeed = e * s;
    placeToSpeed = -e * OMEGA * OMEGA * s;
    speedToSpeed = e * (c - decay * s);
    gainPlace = 1 - fromPlace;
    gainSpeed = -placeToSpeed;
  }

  /** Takes a sample of the signal, volt, and gives where the needle stands, volt rms of a sine. */
  public double put(double volts) {
    double drive = Math.abs(volts) * FORM_FACTOR;
    double next = fromPlace * place + fromSpeed * speed + gainPlace * drive;
    speed = placeToSpeed * place + speedToSpeed * speed + gainSpeed * drive;
    place = next;
    return place;
  }

  /** Where the needle stands, decibel against 0 VU; null below -60. */
  public Double vu() {
    double db = place > 0 ? Decibels.ratio(place, ZERO_V) : Double.NEGATIVE_INFINITY;
    return db < -60 ? null : (Double) db;
  }
}
