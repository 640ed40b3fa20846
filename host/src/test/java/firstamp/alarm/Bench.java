package firstamp.alarm;

import firstamp.model.Alarm;
import firstamp.model.JobSheet;
import firstamp.model.Look;
import firstamp.model.OffCause;
import firstamp.model.ProbeEvent;
import firstamp.model.SwitchState;
import firstamp.model.Trip;
import firstamp.model.TripCause;
import firstamp.model.samples.Calibration;
import firstamp.model.samples.Capture;
import firstamp.model.samples.Channel;
import firstamp.model.samples.ChannelScale;
import firstamp.model.samples.ConversionBlock;
import firstamp.model.samples.LevelWindow;
import firstamp.model.samples.Reading;
import firstamp.model.samples.RippleWindow;
import firstamp.model.samples.SamplePlan;
import firstamp.model.samples.Zero;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Feeds an engine with made-up readings, one every 10 ms; the switch closes at second 10. */
final class Bench implements RuleListener {
  /** Closing of the switch, microseconds since the probe's start. */
  static final long CLOSED = 10_000_000;

  final List<Alarm> transitions = new ArrayList<>();
  final List<String> actions = new ArrayList<>();
  final RuleEngine engine;
  double ampere = 0.1;
  double volts = 12;
  final double[] rails = {8.2, Double.NaN, Double.NaN};
  private final Calibration calibration = Calibration.nominal();
  private long next = CLOSED / 10_000 * SamplePlan.CONVERSIONS_PER_READING;

  Bench(JobSheet sheet) {
    this(sheet, RuleSetup.normal());
  }

  Bench(JobSheet sheet, RuleSetup setup) {
    engine = new RuleEngine(sheet, calibration, setup, this);
  }

  @Override
  public void onAlarm(Alarm alarm) {
    transitions.add(alarm);
  }

  @Override
  public void onAction(String rule) {
    actions.add(rule);
  }

  /** Milliseconds from closing to the next reading. */
  double ms() {
    return (SamplePlan.microsOf(next) - CLOSED) / 1000.0;
  }

  long micros() {
    return SamplePlan.microsOf(next);
  }

  Bench close() {
    engine.onEvent(new ProbeEvent.SwitchChanged(micros(), SwitchState.ON, OffCause.USER));
    return this;
  }

  Bench open() {
    engine.onEvent(new ProbeEvent.SwitchChanged(micros(), SwitchState.OFF, OffCause.USER));
    return this;
  }

  /** Readings as set up, for so long. */
  Bench run(double ms) {
    for (int k = 0; k < Math.round(ms / 10); k++) {
      reading();
    }
    return this;
  }

  void reading() {
    int[] sums = new int[8];
    int[] lowest = new int[8];
    int[] highest = new int[8];
    long[] squares = new long[8];
    fill(Channel.I, ampere, sums, lowest, highest, squares);
    fill(Channel.J, ampere, sums, lowest, highest, squares);
    fill(Channel.V, volts, sums, lowest, highest, squares);
    for (int k = 0; k < 3; k++) {
      fill(Channel.ofRail(k + 1), rails[k], sums, lowest, highest, squares);
    }
    fill(Channel.H, 0, sums, lowest, highest, squares);
    fill(Channel.M, 0, sums, lowest, highest, squares);
    engine.onReading(new Reading(next, sums, lowest, highest, squares));
    next += SamplePlan.CONVERSIONS_PER_READING;
  }

  /** Spreads the sum over neighbouring counts, as noise does; NaN = nothing clipped on. */
  private void fill(
      Channel channel, double value, int[] sums, int[] lowest, int[] highest, long[] squares) {
    int n = channel.conversionsPerReading();
    ChannelScale scale = calibration.scale(channel);
    double counts = Double.isNaN(value) ? 1023 : scale.counts(value);
    counts = Math.max(0, Math.min(1023, counts));
    int c = channel.ordinal();
    sums[c] = (int) Math.round(counts * n);
    lowest[c] = Math.floorDiv(sums[c], n);
    highest[c] = -Math.floorDiv(-sums[c], n);
    squares[c] = (long) n * lowest[c] * lowest[c];
  }

  /** A V conversion at a time, within an otherwise empty block of one plan. */
  Bench voltsAt(long micros, double value) {
    long index = SamplePlan.indexAt(micros);
    long first = Math.floorDiv(index, 32) * 32;
    short[] counts = new short[32];
    Arrays.fill(counts, (short) 0);
    counts[3] = (short) Math.round(calibration.scale(Channel.V).counts(value));
    engine.onConversions(new ConversionBlock(first, counts));
    return this;
  }

  /** Volts at one value for so many plans of 2 ms from a time on, in one block. */
  Bench voltsFrom(long micros, int plans, double value) {
    long first = Math.floorDiv(SamplePlan.indexAt(micros), 32) * 32;
    short[] counts = new short[32 * plans];
    for (int k = 0; k < plans; k++) {
      counts[32 * k + 3] = (short) Math.round(calibration.scale(Channel.V).counts(value));
    }
    engine.onConversions(new ConversionBlock(first, counts));
    return this;
  }

  static int counts(Channel channel, double value) {
    return (int) Math.round(Calibration.nominal().scale(channel).counts(value));
  }

  /** The probe trips at a time; crossed 700 us and decided 200 us before the pin. */
  Bench trip(long opened, TripCause cause, Channel channel, double value, double limit) {
    engine.onEvent(
        new ProbeEvent.Tripped(
            opened,
            new Trip(
                1,
                cause,
                channel == null ? -1 : channel.ordinal(),
                3,
                opened - 700,
                opened - 200,
                opened,
                channel == null ? 0 : counts(channel, value),
                channel == null ? 0 : counts(channel, limit),
                0,
                0,
                null,
                null)));
    return this;
  }

  /** Its capture: one current before the crossing, another from it on. */
  Bench capture(long opened, double before, double after) {
    short[] values = new short[Capture.LENGTH];
    Arrays.fill(values, (short) counts(Channel.I, before));
    for (int k = Capture.DECIDING - 2; k < values.length; k++) {
      values[k] = (short) Math.min(1023, counts(Channel.I, after));
    }
    engine.onEvent(new ProbeEvent.Captured(opened, new Capture(1, opened - 200, 0, values)));
    return this;
  }

  Bench look(Look.Result result, double setV, double setA) {
    long at = micros();
    int pairs = 100;
    double v = calibration.scale(Channel.V).counts(setV);
    double j = calibration.scale(Channel.J).counts(setA);
    engine.onEvent(new ProbeEvent.SwitchChanged(at - 300_000, SwitchState.LOOK, OffCause.USER));
    engine.onEvent(
        new ProbeEvent.Looked(
            at,
            new Look(
                result,
                result.letsClose(),
                at - 300_000,
                at,
                Zero.NONE,
                pairs,
                (int) Math.round(v * 16),
                (int) Math.round(j * 16),
                Math.round(v * pairs),
                Math.round(j * pairs))));
    return this;
  }

  /** A window of 200 ms that ends with the last reading. */
  Bench levels(double headV, double meterV, double share) {
    long first = next - 20 * SamplePlan.CONVERSIONS_PER_READING;
    engine.onLevels(
        new LevelWindow(
            first,
            next,
            headV,
            meterV,
            headV,
            meterV,
            share,
            0,
            headV / 10,
            0,
            50,
            2e-6,
            5e-4,
            false,
            false));
    return this;
  }

  Bench ripple(double mean, double rms) {
    long first = next - 20 * SamplePlan.CONVERSIONS_PER_READING;
    engine.onRipple(new RippleWindow(1, first, next, mean, 50, 0, rms, rms, 1e-4));
    return this;
  }

  Bench event(ProbeEvent event) {
    engine.onEvent(event);
    return this;
  }

  Alarm only(String rule) {
    List<Alarm> found =
        engine.alarms().stream().filter(alarm -> alarm.rule().equals(rule)).toList();
    if (found.size() != 1) {
      throw new AssertionError(found.size() + " alarms of " + rule + " in " + engine.alarms());
    }
    return found.get(0);
  }

  boolean raised(String rule) {
    return engine.alarms().stream().anyMatch(alarm -> alarm.rule().equals(rule));
  }
}
