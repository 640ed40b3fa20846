package firstamp.run.calibration;

import firstamp.analysis.calibrate.SettledSecond;
import firstamp.model.Look;
import firstamp.model.ProbeEvent;
import firstamp.model.ProbeHello;
import firstamp.model.ProbePort;
import firstamp.model.SwitchState;
import firstamp.model.Trip;
import firstamp.model.samples.Calibration;
import firstamp.model.samples.Capture;
import firstamp.model.samples.Channel;
import firstamp.model.samples.ConversionBlock;
import firstamp.model.samples.Reading;
import firstamp.pipeline.RunRefused;
import firstamp.pipeline.StreamSink;
import firstamp.protocol.codes.LineSpeed;
import firstamp.protocol.codes.StreamKind;
import firstamp.protocol.codes.SwitchCause;
import firstamp.protocol.message.HostMessage;
import firstamp.protocol.message.ProbeMessage;
import firstamp.protocol.values.CalibrationData;
import firstamp.protocol.values.LookParameters;
import firstamp.protocol.values.TripLimits;
import firstamp.run.talk.Calibrations;
import firstamp.run.talk.ClockFit;
import firstamp.run.talk.Conversation;
import firstamp.run.talk.FrameTranslator;
import firstamp.run.talk.Hellos;
import firstamp.run.talk.Refusals;
import firstamp.run.talk.WireTerms;
import java.io.IOException;
import java.util.Set;

/**
 * Step by step with the probe, outside a power-up: each method says something and waits for what
 * comes of it.
 *
 * <p>Between two steps a person may take minutes: nothing is sent then, so each begins with {@link
 * #connect()}. Not thread-safe.
 */
public final class CalibrationTalk implements AutoCloseable {
  private static final int POLL_MILLIS = 20;
  private static final long HELLO_NANOS = 250_000_000L;
  private static final long CONNECT_NANOS = 6_000_000_000L;
  private static final long SETTLE_NANOS = 10_000_000_000L;
  private static final long CLOSE_NANOS = 40_000_000_000L;
  private static final long CAPTURE_NANOS = 3_000_000_000L;

  private final ProbePort port;
  private final Conversation talk;
  private final Asking asking;
  private final FrameTranslator translator = new FrameTranslator(new FromStream());
  private final SettledSecond second = new SettledSecond();
  private ProbeMessage.Hello hello;
  private CalibrationData kept;
  private SwitchState state = SwitchState.OFF;
  private Look look;
  private Trip trip;
  private Capture capture;
  private Long closedMicros;
  private volatile boolean offWanted;

  /**
   * Over an open line; {@link #close()} closes it.
   *
   * @param port to the probe
   */
  public CalibrationTalk(ProbePort port) {
    this.port = port;
    this.talk = new Conversation(port, translator, new ClockFit(), new FromProbe());
    this.asking = new Asking(port, talk, this::step);
  }

  /**
   * Finds the probe, and reads what it keeps.
   *
   * @return who answered
   * @throws RunRefused nobody answered
   */
  public ProbeHello connect() throws IOException, RunRefused {
    hello = null;
    long[] askNanos = {Long.MIN_VALUE};
    asking.await(
        () -> hello != null,
        CONNECT_NANOS,
        "say who it is. Check that it is the right port, and that the box has power",
        () -> {
          if (nanos() >= askNanos[0]) {
            talk.send(new HostMessage.HelloRequest(LineSpeed.FAST));
            askNanos[0] = nanos() + HELLO_NANOS;
          }
        });
    state = WireTerms.state(hello.state());
    translator.ignoreTrip(hello.latchedTrip());
    return Hellos.of(hello, port.describe());
  }

  /** The calibration that the probe keeps, with its own uncertainties. */
  public Calibration read() throws IOException, RunRefused {
    kept = null;
    talk.send(new HostMessage.CalibrationRead());
    asking.await(() -> kept != null, Asking.ANSWER_NANOS, "read-calibration", () -> {});
    return Calibrations.of(WireTerms.calibration(hello.calibration()), kept);
  }

  /**
   * Writes a calibration and reads it back.
   *
   * @throws RunRefused the probe refuses, or keeps another one
   */
  public void write(Calibration calibration) throws IOException, RunRefused {
    CalibrationData data = Calibrations.data(calibration);
    connect();
    asking.ask(new HostMessage.CalibrationWrite(data), "keep-calibration");
    connect();
    read();
    if (!data.equals(kept)) {
      throw new RunRefused(RunRefused.Kind.PROBE, Refusals.say("calibration.other", kept, data));
    }
  }

  /**
   * Waits until the named channels hold still over a second, at most ten seconds; then leaves it at
   * the last second, settled or not.
   */
  public SettledSecond settled(Set<Channel> channels) throws IOException, RunRefused {
    translator.streamStarts();
    second.clear();
    asking.ask(new HostMessage.StreamRequest(StreamKind.REDUCED), "start-stream");
    long end = nanos() + SETTLE_NANOS;
    asking.await(
        () ->
            second.full()
                && (nanos() > end || channels.stream().allMatch(c -> second.of(c).still())),
        SETTLE_NANOS + Asking.ANSWER_NANOS,
        "send-readings",
        () -> {});
    asking.ask(new HostMessage.StreamRequest(StreamKind.NONE), "stop-stream");
    return second;
  }

  /** Looks, and leaves the switch open. */
  Look look(TripLimits limits, LookParameters parameters) throws IOException, RunRefused {
    look = null;
    state = SwitchState.OFF;
    asking.ask(new HostMessage.SetLimits(limits), "take-limits");
    asking.ask(new HostMessage.LookRequest(parameters), "look");
    asking.await(
        () -> look != null && state == SwitchState.OFF, CLOSE_NANOS, "finish-look", () -> {});
    return look;
  }

  /**
   * Closes the switch.
   *
   * @return whether it closed; false: {@link #lookResult()} says why not
   */
  boolean switchOn(TripLimits limits, LookParameters parameters) throws IOException, RunRefused {
    look = null;
    trip = null;
    capture = null;
    closedMicros = null;
    asking.ask(new HostMessage.SetLimits(limits), "take-limits");
    asking.ask(new HostMessage.SwitchOn(parameters), "switch-on");
    asking.await(
        () -> closedMicros != null || look != null && !look.closes(),
        CLOSE_NANOS,
        "finish-look",
        () -> {});
    return closedMicros != null;
  }

  /** Opens the switch. */
  void switchOff() throws IOException, RunRefused {
    asking.ask(new HostMessage.SwitchOff(SwitchCause.USER), "switch-off");
    asking.await(() -> state != SwitchState.ON, Asking.ANSWER_NANOS, "open-switch", () -> {});
  }

  /**
   * Opens the switch, or stops what would close it; from any thread. What is waited for then ends
   * with a refusal that says so; where nothing is, the next step does.
   */
  void off() {
    offWanted = true;
  }

  /** The person's off is sent at once, whatever is waited for. */
  private void obeyOff() throws IOException, RunRefused {
    if (offWanted) {
      offWanted = false;
      talk.send(new HostMessage.SwitchOff(SwitchCause.USER));
      throw new RunRefused(RunRefused.Kind.ARMING, Refusals.say("calibration.off"));
    }
  }

  /** Waits for a trip and its capture. */
  boolean awaitTrip(long nanos) throws IOException, RunRefused {
    long end = nanos() + nanos;
    while (trip == null && nanos() < end) {
      step();
    }
    end = nanos() + CAPTURE_NANOS;
    while (trip != null && capture == null && nanos() < end) {
      step();
    }
    return trip != null;
  }

  /** Forgets the latched trip; nothing closes. */
  void clearTrip() throws IOException, RunRefused {
    asking.ask(new HostMessage.ClearTrip(trip.number()), "forget-trial");
  }

  /** Lets time pass with the heart beating. */
  public void hold(long nanos) throws IOException, RunRefused {
    long end = nanos() + nanos;
    while (nanos() < end) {
      step();
    }
  }

  Look lookResult() {
    return look;
  }

  SwitchState state() {
    return state;
  }

  Trip trip() {
    return trip;
  }

  Capture capture() {
    return capture;
  }

  Long closedMicros() {
    return closedMicros;
  }

  private long nanos() {
    return port.time().monotonicNanos();
  }

  private void step() throws IOException, RunRefused {
    obeyOff();
    talk.poll(POLL_MILLIS);
    talk.keepUp();
  }

  /** The last word to the probe is off. */
  @Override
  public void close() {
    try {
      if (state != SwitchState.OFF) {
        talk.send(new HostMessage.SwitchOff(SwitchCause.USER));
      }
    } catch (IOException gone) {
      // Without a host the probe opens the switch by itself.
      state = SwitchState.OFF;
    }
    port.close();
  }

  /** Who it is and what it keeps. */
  private final class FromProbe implements Conversation.Listener {
    @Override
    public void hello(ProbeMessage.Hello message) {
      hello = message;
    }

    @Override
    public void status(ProbeMessage.Status status) {
      // Its state comes with every change.
    }

    @Override
    public void calibration(ProbeMessage.Calibration message) {
      kept = message.data();
    }
  }

  /** Readings and what concerns the switch. */
  private final class FromStream implements StreamSink {
    @Override
    public void accept(ConversionBlock block) {
      // The reduced stream is asked for.
    }

    @Override
    public void accept(Reading reading) {
      second.add(reading);
    }

    @Override
    public void accept(ProbeEvent event) {
      if (event instanceof ProbeEvent.SwitchChanged changed) {
        state = changed.state();
        closedMicros = state == SwitchState.ON ? (Long) changed.micros() : closedMicros;
      } else if (event instanceof ProbeEvent.Looked looked) {
        look = looked.look();
      } else if (event instanceof ProbeEvent.Tripped tripped) {
        trip = tripped.trip();
      } else if (event instanceof ProbeEvent.Captured captured) {
        capture = captured.capture();
      }
    }
  }
}
