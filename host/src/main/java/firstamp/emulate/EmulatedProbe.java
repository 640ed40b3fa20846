package firstamp.emulate;

import firstamp.emulate.bench.Bench;
import firstamp.emulate.bench.Hands;
import firstamp.emulate.bench.Joined;
import firstamp.emulate.bench.QueuedHands;
import firstamp.emulate.box.Box;
import firstamp.emulate.line.Faults;
import firstamp.emulate.line.LineOut;
import firstamp.emulate.line.Pace;
import firstamp.emulate.line.Pacer;
import firstamp.emulate.probe.Commands;
import firstamp.emulate.probe.Converter;
import firstamp.emulate.probe.Memory;
import firstamp.emulate.probe.ProbeMachine;
import firstamp.emulate.probe.SwitchPath;
import firstamp.emulate.wave.WaveformRecorder;
import firstamp.model.PedalJob;
import firstamp.model.ProbePort;
import firstamp.model.TimeSource;
import firstamp.model.samples.Channel;
import firstamp.model.samples.SamplePlan;
import firstamp.protocol.frame.FrameDecoder;
import firstamp.protocol.values.Inputs;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Objects;
import java.util.concurrent.ConcurrentLinkedQueue;

/**
 * A probe in this process that speaks the real wire format, with a {@link Bench} behind it.
 *
 * <p>It owns its time: {@link #read} lets it pass, at most by the timeout, and {@link #time} tells
 * it. At {@link Pace#MAX} whoever reads must also act on what was read (heartbeats!) in the same
 * thread, because the time runs as fast as it is read. The same seed and the same bytes written at
 * the same times give the same bytes. One thread reads; writing and closing may come from others.
 */
public final class EmulatedProbe implements ProbePort {
  private static final long CONVERSION_NANOS = 62_500;
  private static final long SAMPLE_NANOS = 3_000;
  private static final long RESULT_NANOS = 45_000;
  private static final long STEP_NANOS = 1_000_000;
  private static final int STATUS_CONVERSIONS = 3200;
  private static final int POWER_ON = 1;
  private static final int WATCHDOG = 8;

  private final Bench bench;
  private volatile boolean closedOnce;
  private final String description;
  private final Converter converter;
  private final double clockRate;
  private final Faults faults;
  private final Pacer pacer;
  private final SimulatedTime time;
  private final LineOut line;
  private final Memory memory = new Memory();
  private final ConcurrentLinkedQueue<byte[]> fromHost = new ConcurrentLinkedQueue<>();
  private final ConcurrentLinkedQueue<Runnable> acts = new ConcurrentLinkedQueue<>();
  private final WaveformRecorder recorder;
  private final PedalJob pedal;
  private boolean footDown;
  private ProbeMachine machine;
  private Commands commands;
  private FrameDecoder decoder;
  private long bootNanos;
  private long nextConversion;
  private long conversionsDone;
  private boolean closedNow;
  private boolean resetDone;
  private boolean cableOut;
  private volatile boolean closed;

  EmulatedProbe(Bench bench, String description, ProbeOptions options, Box box) {
    this.bench = Objects.requireNonNull(bench, "bench");
    this.description = description;
    this.faults = options.faults();
    this.converter = new Converter(box.inputs(), options.noiseCounts(), options.seed());
    this.pacer = new Pacer(options.pace());
    this.time = new SimulatedTime(TimeSource.system().epochMillis());
    this.line = new LineOut(faults, options.seed() ^ 0x5DEECE66DL);
    this.pedal = options.pedal();
    this.recorder = options.recording() ? new WaveformRecorder(box) : null;
    this.clockRate = 1 + box.clockShare();
    if (box.kept() != null) {
      memory.writeCalibration(box.kept());
    }
    if (faults.calibrationDamaged()) {
      memory.damageCalibration();
    }
    start(POWER_ON);
  }

  private void start(int resetCauseBits) {
    memory.nextBootId();
    machine =
        new ProbeMachine(memory, line, new Pins(), bench::joined, faults.selfTestBits(), pedal);
    commands = new Commands(machine, memory, line, resetCauseBits);
    decoder = new FrameDecoder(commands);
    nextConversion = 0;
    machine.readInputs(inputBits());
    commands.sendHello();
  }

  private void join(Joined joined) {
    if (joined == Joined.OPEN && faults.switchStuck() && closedNow) {
      return;
    }
    if (recorder != null) {
      // The last moment with the switch as it was: what tripped must be in the file.
      recorder.sample(bench, time.nanos() / 1e9);
    }
    closedNow = joined == Joined.CLOSED;
    bench.join(joined);
    if (recorder != null) {
      recorder.joined(joined, time.nanos() / 1e9);
    }
  }

  @Override
  public int read(byte[] buffer, int timeoutMillis) throws IOException {
    long untilNanos = time.nanos() + timeoutMillis * 1_000_000L;
    while (!line.ready() && time.nanos() < untilNanos) {
      if (closed) {
        throw new IOException(description + ": closed");
      }
      if (cableOut) {
        throw new IOException(description + ": the line is gone (cable pulled)");
      }
      long step = Math.min(untilNanos, time.nanos() + STEP_NANOS);
      pacer.waitFor(step);
      while (time.nanos() < step && !line.ready()) {
        advance();
      }
    }
    return line.take(buffer);
  }

  /** One conversion. */
  private void advance() {
    long start = startOf(nextConversion);
    runTo(start);
    if (cableDue() || resetDue()) {
      return;
    }
    takeFromHost();
    machine.begin(nextConversion, inputBits());
    if (machine.clipsRead() || nextConversion % STATUS_CONVERSIONS == 0 && machine.hostThere()) {
      commands.sendStatus();
    }
    runTo(start + SAMPLE_NANOS);
    Channel channel = SamplePlan.channelAt(nextConversion);
    int counts = converter.counts(channel, faults.shown(channel, bench.value(channel)));
    if (recorder != null) {
      recorder.sample(bench, time.nanos() / 1e9);
    }
    runTo(start + RESULT_NANOS);
    machine.result(channel, counts);
    nextConversion++;
    conversionsDone++;
    clock(startOf(nextConversion));
  }

  /** True time at which a conversion begins; the probe counts its own clock. */
  private long startOf(long conversion) {
    return bootNanos + Math.round(conversion * CONVERSION_NANOS / clockRate);
  }

  private void runTo(long nanos) {
    closedOnce |= machine.state() == firstamp.protocol.codes.ProbeState.ON;
    bench.advance(nanos / 1e9, false);
    clock(nanos);
  }

  private void clock(long nanos) {
    time.set(Math.max(nanos, time.nanos()));
    line.now(time.nanos());
  }

  private boolean cableDue() {
    if (faults.cableOutAtS() < 0 || cableOut || time.nanos() < faults.cableOutAtS() * 1e9) {
      return false;
    }
    cableOut = true;
    line.cut();
    return true;
  }

  private boolean resetDue() {
    if (faults.resetAtS() < 0 || resetDone || time.nanos() < faults.resetAtS() * 1e9) {
      return false;
    }
    resetDone = true;
    join(Joined.OPEN);
    bootNanos = time.nanos();
    line.restart();
    start(WATCHDOG);
    return true;
  }

  private void takeFromHost() {
    for (Runnable act = acts.poll(); act != null; act = acts.poll()) {
      act.run();
    }
    for (byte[] bytes = fromHost.poll(); bytes != null; bytes = fromHost.poll()) {
      decoder.push(bytes, 0, bytes.length);
      line.speed(commands.speed());
    }
  }

  @Override
  public void write(byte[] bytes) throws IOException {
    if (closed) {
      throw new IOException(description + ": closed");
    }
    fromHost.add(bytes.clone());
  }

  /**
   * What the person's hands would do, as far as the invented set has such a point or joint. Safe
   * from any thread: an act happens before the next conversion.
   */
  public Hands hands() {
    return new QueuedHands(bench.hands(), acts);
  }

  /** Whether the switch was closed at any time; safe from any thread. */
  public boolean closedOnce() {
    return closedOnce;
  }

  /** Puts the foot on the box's pedal, or takes it off. Safe from any thread. */
  public void foot(boolean down) {
    acts.add(() -> footDown = down);
  }

  private int inputBits() {
    return bench.inputBits()
        | (footDown ? Inputs.PEDAL_DOWN : 0)
        | (closedNow && bench.limiting() ? Inputs.LIMITING : 0);
  }

  /** Conversions since the first start, over resets. */
  public long conversions() {
    return conversionsDone;
  }

  /**
   * Writes what was at the clips since the switch first closed as a waveform file, and beside it a
   * front-end file (same name, {@code .front-end.json} at its end) with the box and what the look
   * found.
   *
   * @throws IOException it cannot be written, or the switch never closed
   */
  public void saveWaveform(Path csv) throws IOException {
    if (recorder == null) {
      throw new IllegalStateException("opened without recording: nothing was kept");
    }
    recorder.write(csv);
  }

  @Override
  public TimeSource time() {
    return time;
  }

  @Override
  public boolean inputEnded() {
    return bench.ended();
  }

  @Override
  public String describe() {
    return description;
  }

  @Override
  public void close() {
    closed = true;
  }

  /** Its switch and look path. */
  private final class Pins implements SwitchPath {
    /** Tests of the limiter in this arming. */
    private int tests;

    @Override
    public void join(Joined joined) {
      tests = joined == Joined.OPEN ? 0 : tests;
      EmulatedProbe.this.join(joined);
    }

    @Override
    public void pump(boolean on) {
      tests += on ? 1 : 0;
      if (faults.limiterFailsFrom() > 0 && tests >= faults.limiterFailsFrom()) {
        bench.join(on ? Joined.CLOSED : Joined.OPEN);
      }
    }
  }
}
