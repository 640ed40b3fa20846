package firstamp.pipeline;

import firstamp.model.Look;
import firstamp.model.OffCause;
import firstamp.model.ProbeEvent;
import firstamp.model.SwitchState;
import firstamp.model.samples.Calibration;
import firstamp.model.samples.Channel;
import firstamp.model.samples.ChannelScale;
import firstamp.model.samples.ConversionBlock;
import firstamp.model.samples.SamplePlan;
import firstamp.model.samples.Zero;
import java.util.SplittableRandom;

/**
 * A generated power-up, conversion by conversion: surge, rails that come up, motor, tone or speech,
 * thump, ripple, hum, a supply up to 10 % off, noise of 0.7 count. Everything up to 0.85 of its
 * limit on {@link QualitySheet}. A fault overwrites what a healthy set would show.
 *
 * <p>It knows the sheet and nothing of the rules.
 */
final class GeneratedSet {
  /** Closing of the switch, conversions since the probe's start. */
  static final long CLOSED = 10L * SamplePlan.CONVERSIONS_PER_SECOND;

  private static final int BLOCK = 10 * SamplePlan.SLOTS;
  private static final double NOISE_COUNTS = 0.7;
  private static final double SPAN = 0.85;
  private static final float[] GAUSS = gauss();

  /** Changes what stands at the clips. */
  @FunctionalInterface
  interface Fault {
    /** Volts or ampere at a channel, given what a healthy set would show; NaN = clip open. */
    double value(Channel channel, double seconds, double healthy);
  }

  private final SplittableRandom random;
  private final ChannelScale[] scales = new ChannelScale[Channel.values().length];
  private final double supply;
  private final double idle;
  private final double surge;
  private final double surgeTau;
  private final double creep;
  private final double motor;
  private final double motorAt;
  private final double railTau;
  private final double rail1;
  private final double rail1Swing;
  private final double rail1SwingHz;
  private final double rail1Ripple;
  private final double rail2;
  private final double rail2Ripple;
  private final double mainsHz;
  private final double offset;
  private final double thump;
  private final boolean speech;
  private final double meterPeak;
  private final double below;
  private final double hum;
  private long next = CLOSED;
  private long noiseState;
  private boolean on = true;
  private double openedAt;

  GeneratedSet(long seed) {
    random = new SplittableRandom(seed);
    noiseState = random.nextLong() | 1;
    for (Channel channel : Channel.values()) {
      scales[channel.ordinal()] = Calibration.nominal().scale(channel);
    }
    supply = 12 * (1 + between(-0.1, 0.1));
    idle = 0.002 / SPAN * Math.pow(0.5 / (0.002 / SPAN), random.nextDouble());
    surge = SPAN * QualitySheet.INRUSH_A * random.nextDouble();
    surgeTau = between(0.003, 0.015);
    double drift = SPAN * QualitySheet.CREEP_A_PER_MIN / 60 * between(-1, 1);
    // It must not drift to where it draws nothing.
    creep = Math.max(drift, -(idle - 0.002 / SPAN) / 20);
    motor = random.nextBoolean() ? between(0, 0.2) : 0;
    motorAt = between(0.3, 2);
    railTau = between(0.01, 0.04);
    rail1Swing = SPAN * 0.41 / 2 * random.nextDouble();
    rail1 = 8.2 + (SPAN * 0.41 - rail1Swing) * between(-1, 1);
    rail1SwingHz = between(0.5, 6);
    rail1Ripple = SPAN * QualitySheet.RIPPLE1_V * random.nextDouble();
    rail2 = 12 + SPAN * 1.2 * between(-1, 1);
    rail2Ripple = SPAN * QualitySheet.RIPPLE2_V * random.nextDouble();
    mainsHz = random.nextBoolean() ? 50 : 60;
    offset = SPAN * QualitySheet.OFFSET_V * between(-1, 1);
    thump = between(-6, 6);
    speech = random.nextBoolean();
    below = 38 + SPAN * 6 * between(-1, 1);
    hum = SPAN * QualitySheet.HUM_V * random.nextDouble();
    // The head stays within 0.85 of its 10 mV.
    double headPeak = SPAN * 0.01 - Math.sqrt(2) * hum;
    meterPeak = Math.min(between(0.08, 0.7), headPeak * Math.pow(10, below / 20) / 1.4);
  }

  /** Uniform between two values. */
  double between(double low, double high) {
    return low + (high - low) * random.nextDouble();
  }

  /** How far over its limit a fault is: 1.2 to 20 times, evenly over the logarithm. */
  double factor() {
    return 1.2 * Math.pow(20 / 1.2, random.nextDouble());
  }

  boolean coin() {
    return random.nextBoolean();
  }

  /** Peak of the meter's signal. */
  double meterPeak() {
    return meterPeak;
  }

  /** Seconds from closing to the next conversion. */
  double seconds() {
    return (next - CLOSED) / (double) SamplePlan.CONVERSIONS_PER_SECOND;
  }

  long micros() {
    return SamplePlan.microsOf(next);
  }

  /** A clear look, then the switch closes. */
  GeneratedSet close(Chain chain) {
    long at = micros();
    int v = (int) Math.round(0.4 * supply / step(Channel.V) * 16);
    int j = (int) Math.round(0.6 * supply / 330 / step(Channel.J) * 16);
    Look look =
        new Look(Look.Result.CLEAR, true, at - 400_000, at, Zero.NONE, 200, v, j, v * 12L, j * 12L);
    chain.accept(new ProbeEvent.SwitchChanged(at - 400_000, SwitchState.LOOK, OffCause.USER));
    chain.accept(new ProbeEvent.Looked(at, look));
    chain.accept(new ProbeEvent.SwitchChanged(at, SwitchState.ON, OffCause.USER));
    return this;
  }

  GeneratedSet open(Chain chain) {
    on = false;
    openedAt = seconds();
    chain.accept(new ProbeEvent.SwitchChanged(micros(), SwitchState.OFF, OffCause.USER));
    return this;
  }

  private double step(Channel channel) {
    return Math.abs(scales[channel.ordinal()].perCount());
  }

  /** Nothing arrives for a while. */
  void silence(double seconds) {
    next += Math.round(seconds * SamplePlan.CONVERSIONS_PER_SECOND) / BLOCK * BLOCK;
  }

  /** The next 20 ms. */
  void block(Chain chain, Fault fault) {
    short[] counts = new short[BLOCK];
    for (int k = 0; k < BLOCK; k++) {
      Channel channel = SamplePlan.channelAt(next + k);
      double t = (next + k - CLOSED) / (double) SamplePlan.CONVERSIONS_PER_SECOND;
      double value = fault.value(channel, t, on ? healthy(channel, t) : off(channel, t));
      double at = Double.isNaN(value) ? 1023 : scales[channel.ordinal()].counts(value) + noise();
      counts[k] = (short) Math.max(0, Math.min(1023, Math.round(at)));
    }
    chain.accept(new ConversionBlock(next, counts));
    next += BLOCK;
  }

  private double off(Channel channel, double t) {
    double left = Math.exp(-(t - openedAt) / 0.2);
    return switch (channel) {
      case I, J, H, M -> 0;
      case V -> supply * left;
      case R1 -> rail1 * left;
      case R2 -> rail2 * left;
      case R3 -> 0;
    };
  }

  private double healthy(Channel channel, double t) {
    return switch (channel) {
      case I, J -> ampere(t);
      case V -> supply - 0.2 * ampere(t);
      case R1 ->
          rail1 * rise(t)
              + rail1Swing * Math.sin(2 * Math.PI * rail1SwingHz * t)
              + ripple(rail1Ripple, t);
      case R2 -> rail2 * rise(t) + ripple(rail2Ripple, t);
      case R3 -> offset + 1.5 * signal(t) + thump * Math.exp(-t / 0.15);
      case H ->
          signal(t) * meterPeak / Math.pow(10, below / 20)
              + Math.sqrt(2) * hum * Math.sin(2 * Math.PI * 2 * mainsHz * t)
              + 1e-3 * thump * Math.exp(-t / 0.15);
      case M -> signal(t) * meterPeak + 0.2 * thump * Math.exp(-t / 0.15);
    };
  }

  private double ampere(double t) {
    double turning = t < motorAt ? 0 : motor * (1 + 1.5 * Math.exp(-(t - motorAt) / 0.08));
    return idle + turning + creep * t + (surge - idle) * Math.exp(-t / surgeTau);
  }

  private double rise(double t) {
    return 1 - Math.exp(-t / railTau);
  }

  private double ripple(double rms, double t) {
    return Math.sqrt(2) * rms * Math.sin(2 * Math.PI * 2 * mainsHz * t);
  }

  /** Of peak 1: a tone, or words of a voice. */
  private double signal(double t) {
    if (!speech) {
      return Math.sin(2 * Math.PI * 400 * t);
    }
    if (Math.sin(2 * Math.PI * 0.55 * t + below) < -0.5) {
      return 0;
    }
    double syllable = Math.max(0, Math.sin(2 * Math.PI * 3.7 * t));
    double voice = 2 * Math.PI * 133 * t;
    return 0.5 * syllable * (Math.sin(voice) + 0.8 * Math.sin(3 * voice) + Math.sin(5.3 * voice));
  }

  private double noise() {
    noiseState ^= noiseState << 13;
    noiseState ^= noiseState >>> 7;
    noiseState ^= noiseState << 17;
    return GAUSS[(int) (noiseState >>> 48)];
  }

  private static float[] gauss() {
    java.util.Random source = new java.util.Random(5);
    float[] values = new float[1 << 16];
    for (int k = 0; k < values.length; k++) {
      values[k] = (float) (NOISE_COUNTS * source.nextGaussian());
    }
    return values;
  }
}
