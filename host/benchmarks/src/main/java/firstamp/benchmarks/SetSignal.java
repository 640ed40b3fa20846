package firstamp.benchmarks;

import java.util.SplittableRandom;

/**
 * Conversions of an invented set: tone, speech-like bursts or silence at head and meter, a motor's
 * ripple on the supply current (both current channels see the same current), rails with a little
 * ripple, and noise of 0.7 count on everything.
 *
 * <p>While it makes values it adds up the fewest bits that hold them ({@link InformationBound}).
 */
final class SetSignal {
  /** Standard deviation of the converter's noise, counts. */
  static final double NOISE_COUNTS = 0.7;

  private static final double AUDIO_RATE = 4000;
  private static final double METER_GAIN = 1.0;
  private static final double HEAD_GAIN = 0.5;
  private static final double TONE_COUNTS = 180;
  private static final double SPEECH_COUNTS = 70;
  private static final double COARSE_MILLIAMPS = 12.2;
  private static final double FINE_MILLIAMPS = 0.39;
  private static final double[] LOWEST_HERTZ = {250, 800, 1350};
  private static final double[] HIGHEST_HERTZ = {750, 1300, 1750};
  private static final double[] WIDTHS_HERTZ = {70, 90, 130};
  private static final double[] MOTOR_HERTZ = {110, 220, 330};
  private static final double[] MOTOR_MILLIAMPS = {28, 14, 7};

  private final double speechShare;
  private final double toneShare;
  private final double motorShare;
  private final SplittableRandom random;
  private final Resonance[] motor = new Resonance[MOTOR_HERTZ.length];
  private final InformationBound bound;
  private final double headMeterLevel;
  private final double[] railLevel = {640.31, 402.77, 818.52};

  private int sceneLeft;
  private int scene;
  private double toneStep;
  private double tonePhase;
  private int syllableLeft;
  private int syllableLength;
  private Resonance voice;
  private double loudness;
  private int motorLeft;
  private boolean motorOn;
  private double motorSpeed;
  private double nextProgram;
  private double milliamps;
  private double lastMilliamps;
  private long step;

  SetSignal(Mix mix, long seed) {
    this(mix.speechShare, mix.toneShare, mix.motorShare, seed);
  }

  /** Nothing but levels and noise. */
  static SetSignal silence(long seed) {
    return new SetSignal(0, 0, 0, seed);
  }

  private SetSignal(double speechShare, double toneShare, double motorShare, long seed) {
    this.speechShare = speechShare;
    this.toneShare = toneShare;
    this.motorShare = motorShare;
    this.random = new SplittableRandom(seed);
    for (int m = 0; m < motor.length; m++) {
      motor[m] = new Resonance(new double[] {MOTOR_HERTZ[m]}, new double[] {4}, AUDIO_RATE);
    }
    bound = new InformationBound(HEAD_GAIN, METER_GAIN, motor, motorCounts());
    headMeterLevel = 510 + 4 * random.nextDouble();
    nextProgram = program();
  }

  /** The next conversions; as many as the array holds, a whole number of plans. */
  void next(short[] counts) {
    for (int k = 0; k < counts.length; k += 4) {
      double program = nextProgram;
      nextProgram = program();
      lastMilliamps = milliamps;
      milliamps = current();
      counts[k] = count(17.4 + milliamps / COARSE_MILLIAMPS);
      counts[k + 1] = count(headMeterLevel + HEAD_GAIN * program);
      // The meter is converted 62.5 us, a quarter of its period, after the head.
      counts[k + 2] = count(headMeterLevel + METER_GAIN * (0.75 * program + 0.25 * nextProgram));
      counts[k + 3] = fourth((int) (step & 7));
      step++;
    }
  }

  /** Fewest bits for everything made so far. */
  double boundBits() {
    return bound.bits();
  }

  private short fourth(int slot) {
    switch (slot) {
      case 0:
        return count(204.6 - 0.004 * milliamps);
      case 4:
        return count(9.3 + (0.25 * lastMilliamps + 0.75 * milliamps) / FINE_MILLIAMPS);
      default:
        int rail = slot < 4 ? slot - 1 : slot - 5;
        double ripple = rail == 0 ? 1.6 * Math.sin(2 * Math.PI * 100 * step / AUDIO_RATE) : 0;
        double drift = 0.3 * Math.sin(2 * Math.PI * step / AUDIO_RATE / (70 + 20 * rail));
        return count(railLevel[rail] + ripple + drift);
    }
  }

  private short count(double value) {
    long rounded = Math.round(value + NOISE_COUNTS * random.nextGaussian());
    return (short) Math.max(0, Math.min(1023, rounded));
  }

  private double program() {
    if (sceneLeft-- <= 0) {
      sceneLeft = (int) (AUDIO_RATE * (2 + 4 * random.nextDouble()));
      double draw = random.nextDouble();
      scene = draw < speechShare ? 1 : draw < speechShare + toneShare ? 2 : 0;
      toneStep = 2 * Math.PI * (300 + 700 * random.nextDouble()) / AUDIO_RATE;
    }
    double value = 0;
    double envelope = 0;
    if (scene == 2) {
      tonePhase += toneStep;
      value = TONE_COUNTS * Math.sin(tonePhase);
    } else if (scene == 1) {
      if (syllableLeft-- <= 0) {
        syllableLength = (int) (AUDIO_RATE * (0.12 + 0.25 * random.nextDouble()));
        syllableLeft = syllableLength;
        voice = voice();
        loudness = random.nextInt(5) == 0 ? 0 : SPEECH_COUNTS * (0.3 + 1.4 * random.nextDouble());
        bound.syllable(voice, loudness);
      }
      envelope = Math.sin(Math.PI * (syllableLeft + 0.5) / (syllableLength + 1));
      value = envelope * loudness * voice.next(random.nextGaussian());
    }
    bound.program(envelope);
    return value;
  }

  /** No two syllables have the same spectrum. */
  private Resonance voice() {
    double[] hertz = new double[LOWEST_HERTZ.length];
    for (int k = 0; k < hertz.length; k++) {
      hertz[k] = LOWEST_HERTZ[k] + (HIGHEST_HERTZ[k] - LOWEST_HERTZ[k]) * random.nextDouble();
    }
    return new Resonance(hertz, WIDTHS_HERTZ, AUDIO_RATE);
  }

  private double current() {
    if (motorLeft-- <= 0) {
      motorLeft = (int) (AUDIO_RATE * (6 + 12 * random.nextDouble()));
      motorOn = random.nextDouble() < motorShare;
    }
    motorSpeed += ((motorOn ? 1 : 0) - motorSpeed) / (0.08 * AUDIO_RATE);
    double value = 61 + 88 * motorSpeed;
    for (int m = 0; m < motor.length; m++) {
      value += motorSpeed * MOTOR_MILLIAMPS[m] * motor[m].next(random.nextGaussian());
    }
    bound.motor(motorSpeed);
    return value;
  }

  private static double[] motorCounts() {
    double[] counts = new double[MOTOR_MILLIAMPS.length];
    for (int m = 0; m < counts.length; m++) {
      counts[m] = MOTOR_MILLIAMPS[m] / COARSE_MILLIAMPS;
    }
    return counts;
  }
}
