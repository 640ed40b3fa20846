package firstamp.analysis.spectrum;

/**
 * What a needle of volume units shows: the mean of the full-wave rectified signal, scaled for a
 * sine, through a movement that reaches 99 % in 300 ms and swings 1.25 % over (ANSI C16.5-1942 /
 * IEC 60268-17 as quoted at second hand: 99 % in 300 ms, 1 to 1.5 % over; the second-order model
 * with zeta 0.81272 and 13.5119 rad/s is worked out from these two).
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
  private Quarters quarters;
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

  /** What place, speed and each of the magnitudes in between come to after four samples. */
  private void severalAtOnce() {
    for (int part = 0; part < 6; part++) {
      double ofPlace = part == 0 ? 1 : 0;
      double ofSpeed = part == 1 ? 1 : 0;
      for (int sample = 1; sample <= 4; sample++) {
        double drive = part == sample + 1 ? FORM_FACTOR : 0;
        double next = fromPlace * ofPlace + fromSpeed * ofSpeed + gainPlace * drive;
        ofSpeed = placeToSpeed * ofPlace + speedToSpeed * ofSpeed + gainSpeed * drive;
        ofPlace = next;
      }
      fourPlace[part] = ofPlace;
      fourSpeed[part] = ofSpeed;
    }
  }

  /**
   * Where the needle was, volt rms of a sine.
   *
   * @param highest place
   * @param mean place
   */
  record Swing(double highest, double mean) {}

  /**
   * Takes four signals of the same length in turn, a sample of each: as if {@link #put(double)} had
   * been called for every one, to six digits, and the needle looked at after every fourth.
   *
   * @param turns signals, their length a multiple of 4
   */
  Swing put(float[][] turns) {
    int length = turns[0].length;
    if (quarters == null || quarters.drivePlace.length != length) {
      quarters = new Quarters(length);
    }
    drive(turns, fourPlace, quarters.drivePlace);
    drive(turns, fourSpeed, quarters.driveSpeed);
    return quarters.swing();
  }

  private static void drive(float[][] turns, double[] four, float[] drive) {
    float[] first = turns[0];
    float[] second = turns[1];
    float[] third = turns[2];
    float[] fourth = turns[3];
    float a = (float) four[2];
    float b = (float) four[3];
    float c = (float) four[4];
    float d = (float) four[5];
    for (int i = 0; i < drive.length; i++) {
      drive[i] =
          a * Math.abs(first[i])
              + b * Math.abs(second[i])
              + (c * Math.abs(third[i]) + d * Math.abs(fourth[i]));
    }
  }

  /**
   * Every place waits for the one before. So the needle goes through four quarters of a signal at
   * once, through the last three as if from rest, and what place and speed at the start of a
   * quarter still come to is added afterwards.
   */
  private final class Quarters {
    final float[] drivePlace;
    final float[] driveSpeed;
    private final int length;
    private final double[][] places;
    private final double[] leftOfPlace;
    private final double[] leftOfSpeed;
    private final double placeToLastSpeed;
    private final double speedToLastSpeed;

    Quarters(int whole) {
      drivePlace = new float[whole];
      driveSpeed = new float[whole];
      length = whole / 4;
      places = new double[4][length];
      leftOfPlace = new double[length];
      leftOfSpeed = new double[length];
      placeToLastSpeed = left(1, 0, leftOfPlace);
      speedToLastSpeed = left(0, 1, leftOfSpeed);
    }

    /** Places after four, eight, ... samples without a signal; returns the last speed. */
    private double left(double beginPlace, double beginSpeed, double[] places) {
      double p = beginPlace;
      double s = beginSpeed;
      for (int i = 0; i < places.length; i++) {
        double next = fourPlace[0] * p + fourPlace[1] * s;
        s = fourSpeed[0] * p + fourSpeed[1] * s;
        p = next;
        places[i] = p;
      }
      return s;
    }

    Swing swing() {
      double[] lastSpeeds = fromRest();
      for (int q = 0; q < 4; q++) {
        if (q > 0) {
          addBegin(places[q]);
          speed = lastSpeeds[q] + placeToLastSpeed * place + speedToLastSpeed * speed;
        } else {
          speed = lastSpeeds[0];
        }
        place = places[q][length - 1];
      }
      double[] first = places[0];
      double[] second = places[1];
      double[] third = places[2];
      double[] fourth = places[3];
      double highest = 0;
      double sum = 0;
      for (int i = 0; i < length; i++) {
        double a = first[i];
        double b = second[i];
        double c = third[i];
        double d = fourth[i];
        double early = a > b ? a : b;
        double late = c > d ? c : d;
        double most = early > late ? early : late;
        highest = most > highest ? most : highest;
        sum += a + b + (c + d);
      }
      return new Swing(highest, sum / (4 * length));
    }

    /** Goes through all four, through the first from where it is; returns the last speeds. */
    private double[] fromRest() {
      double pp = fourPlace[0];
      double sp = fourPlace[1];
      double ps = fourSpeed[0];
      double ss = fourSpeed[1];
      double[] first = places[0];
      double[] second = places[1];
      double[] third = places[2];
      double[] fourth = places[3];
      double p0 = place;
      double s0 = speed;
      double p1 = 0;
      double s1 = 0;
      double p2 = 0;
      double s2 = 0;
      double p3 = 0;
      double s3 = 0;
      for (int i = 0; i < length; i++) {
        double next = pp * p0 + (sp * s0 + drivePlace[i]);
        s0 = ps * p0 + (ss * s0 + driveSpeed[i]);
        p0 = next;
        first[i] = next;
        next = pp * p1 + (sp * s1 + drivePlace[length + i]);
        s1 = ps * p1 + (ss * s1 + driveSpeed[length + i]);
        p1 = next;
        second[i] = next;
        next = pp * p2 + (sp * s2 + drivePlace[2 * length + i]);
        s2 = ps * p2 + (ss * s2 + driveSpeed[2 * length + i]);
        p2 = next;
        third[i] = next;
        next = pp * p3 + (sp * s3 + drivePlace[3 * length + i]);
        s3 = ps * p3 + (ss * s3 + driveSpeed[3 * length + i]);
        p3 = next;
        fourth[i] = next;
      }
      return new double[] {s0, s1, s2, s3};
    }

    private void addBegin(double[] places) {
      double p = place;
      double s = speed;
      double[] ofPlace = leftOfPlace;
      double[] ofSpeed = leftOfSpeed;
      for (int i = 0; i < places.length; i++) {
        places[i] = places[i] + p * ofPlace[i] + s * ofSpeed[i];
      }
    }
  }

  /**
   * Takes a sample of the signal, volt, and returns the place of the needle, volt rms of a sine.
   */
  public double put(double volts) {
    double drive = Math.abs(volts) * FORM_FACTOR;
    double next = fromPlace * place + fromSpeed * speed + gainPlace * drive;
    speed = placeToSpeed * place + speedToSpeed * speed + gainSpeed * drive;
    place = next;
    return place;
  }

  /** Place of the needle, decibel relative to 0 VU; null below -60. */
  public Double vu() {
    double db = place > 0 ? Decibels.ratio(place, ZERO_V) : Double.NEGATIVE_INFINITY;
    return db < -60 ? null : (Double) db;
  }
}
