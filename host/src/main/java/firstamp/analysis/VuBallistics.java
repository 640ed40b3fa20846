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
  private final double[] fourPlace = new double[6];
  private final double[] fourSpeed = new double[6];
  private final double[] threePlace = new double[5];
  private final double[] twoPlace = new double[4];
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
    severalAtOnce();
  }

  /** What place, speed and each of the drives in between come to after two, three, four samples. */
  private void severalAtOnce() {
    for (int part = 0; part < 6; part++) {
      double ofPlace = part == 0 ? 1 : 0;
      double ofSpeed = part == 1 ? 1 : 0;
      for (int sample = 1; sample <= 4; sample++) {
        double drive = part == sample + 1 ? 1 : 0;
        double next = fromPlace * ofPlace + fromSpeed * ofSpeed + gainPlace * drive;
        ofSpeed = placeToSpeed * ofPlace + speedToSpeed * ofSpeed + gainSpeed * drive;
        ofPlace = next;
        if (sample == 2 && part < 4) {
          twoPlace[part] = ofPlace;
        } else if (sample == 3 && part < 5) {
          threePlace[part] = ofPlace;
        } else if (sample == 4) {
          fourPlace[part] = ofPlace;
          fourSpeed[part] = ofSpeed;
        }
      }
    }
  }

  /**
   * Where the needle stood, volt rms of a sine.
   *
   * @param highest place
   * @param mean place
   */
  record Swing(double highest, double mean) {}

  /**
   * Takes four signals of the same length in turn, a sample of each: as if {@link #put(double)} had
   * been called for every one, to rounding. One sample waits for the one before; four at once wait
   * only for the four before, which takes half the time.
   */
  Swing put(double[][] turns) {
    double[] first = turns[0];
    double[] second = turns[1];
    double[] third = turns[2];
    double[] fourth = turns[3];
    double from = place;
    double moving = speed;
    double highest = 0;
    double sum = 0;
    for (int i = 0; i < first.length; i++) {
      double a = Math.abs(first[i]) * FORM_FACTOR;
      double b = Math.abs(second[i]) * FORM_FACTOR;
      double c = Math.abs(third[i]) * FORM_FACTOR;
      double d = Math.abs(fourth[i]) * FORM_FACTOR;
      double one = gainPlace * a + (fromPlace * from + fromSpeed * moving);
      double two = twoPlace[2] * a + twoPlace[3] * b + (twoPlace[0] * from + twoPlace[1] * moving);
      double three =
          threePlace[2] * a
              + threePlace[3] * b
              + threePlace[4] * c
              + (threePlace[0] * from + threePlace[1] * moving);
      double four =
          fourPlace[2] * a
              + fourPlace[3] * b
              + (fourPlace[4] * c + fourPlace[5] * d)
              + (fourPlace[0] * from + fourPlace[1] * moving);
      moving =
          fourSpeed[2] * a
              + fourSpeed[3] * b
              + (fourSpeed[4] * c + fourSpeed[5] * d)
              + (fourSpeed[0] * from + fourSpeed[1] * moving);
      from = four;
      double early = one > two ? one : two;
      double late = three > four ? three : four;
      double most = early > late ? early : late;
      highest = most > highest ? most : highest;
      sum += one + two + (three + four);
    }
    place = from;
    speed = moving;
    return new Swing(highest, sum / (4 * first.length));
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
