package firstamp.sound;

import firstamp.model.Priority;

/**
 * Short tunes, told apart by number of pulses, by pitch and by rhythm, so that one of these three
 * is enough.
 *
 * <p>Each pulse has two overtones: a small loudspeaker gives little of the lowest tone, and an ear
 * that hears little above 2 kHz needs no more. Pulses rise and fall within 8 ms, without a click.
 */
public enum Tune {
  /** Before switching on: three rising pulses, so that everybody knows that sound works. */
  TEST(0.35, 90, 30, 523, 659, 784),
  /** Lowest priority: one low pulse. */
  LOW(0.4, 220, 0, 330),
  /** Middle priority: two equal pulses. */
  MEDIUM(0.6, 170, 110, 494, 494),
  /** Highest priority: six quick pulses up and down. */
  HIGH(0.85, 95, 35, 660, 988, 660, 988, 660, 988),
  /** Behind it, where a plug is in the wall: the mains side is still live. */
  PLUG(0.85, 320, 60, 196, 147);

  /** Samples per second. */
  public static final int RATE_HERTZ = 44_100;

  private static final double EDGE_S = 0.008;
  private static final double[] OVERTONES = {1, 0.5, 0.25};

  private final double loudness;
  private final int pulseMs;
  private final int gapMs;
  private final double[] hertz;

  Tune(double loudness, int pulseMs, int gapMs, double... hertz) {
    this.loudness = loudness;
    this.pulseMs = pulseMs;
    this.gapMs = gapMs;
    this.hertz = hertz;
  }

  /** The tune of a priority. */
  public static Tune of(Priority priority) {
    return switch (priority) {
      case HIGH -> HIGH;
      case MEDIUM -> MEDIUM;
      case LOW -> LOW;
    };
  }

  /** How many pulses it has. */
  public int pulses() {
    return hertz.length;
  }

  /** The tune, 16 bit, one channel. */
  public short[] pcm() {
    int pulse = samples(pulseMs);
    int gap = samples(gapMs);
    short[] pcm = new short[hertz.length * pulse + (hertz.length - 1) * gap];
    for (int k = 0; k < hertz.length; k++) {
      pulse(pcm, k * (pulse + gap), pulse, hertz[k]);
    }
    return pcm;
  }

  private void pulse(short[] pcm, int from, int length, double hertz) {
    double whole = 0;
    for (double share : OVERTONES) {
      whole += share;
    }
    double edge = EDGE_S * RATE_HERTZ;
    for (int n = 0; n < length; n++) {
      double sum = 0;
      for (int k = 0; k < OVERTONES.length; k++) {
        sum += OVERTONES[k] * Math.sin(2 * Math.PI * hertz * (k + 1) * n / RATE_HERTZ);
      }
      double near = Math.min(1, Math.min(n, length - 1 - n) / edge);
      double envelope = 0.5 - 0.5 * Math.cos(Math.PI * near);
      pcm[from + n] = (short) Math.round(Short.MAX_VALUE * loudness * envelope * sum / whole);
    }
  }

  private static int samples(int ms) {
    return ms * RATE_HERTZ / 1000;
  }
}
