package firstamp.session;

import firstamp.model.Look;
import firstamp.model.OffCause;
import firstamp.model.ProbeEvent;
import firstamp.model.SwitchState;
import firstamp.protocol.HostMessage;
import firstamp.protocol.LineSpeed;
import firstamp.protocol.ProbeMessage;
import firstamp.protocol.RefusalReason;
import firstamp.protocol.Resend;
import firstamp.protocol.SelfTest;
import firstamp.protocol.StreamKind;
import firstamp.protocol.SwitchCause;
import java.io.IOException;
import java.util.Set;
import java.util.TreeSet;

/**
 * The steps of a live run, one after the other; each call of {@link #step()} does what is due now
 * and returns.
 *
 * <p>Not thread-safe: belongs to the session thread.
 */
public final class RunSteps {
  private static final long HELLO_NANOS = 250_000_000L;
  private static final long CONNECT_NANOS = 6_000_000_000L;
  private static final long CAPTURE_AGAIN_MICROS = 700_000;
  private static final long CLIPS_MICROS = 200_000;
  private static final int SPEED_TRIES = 3;

  /** Where a live run stands. */
  public enum Step {
    /** Looking for the probe. */
    CONNECTING,
    /** The stream is asked for. */
    STARTING,
    /** The probe takes its limits. */
    LIMITS,
    /** Logged with the switch open. */
    QUIET,
    /** The probe is asked to switch on. */
    ARMING,
    /** The probe checks, looks and closes. */
    CLOSING,
    /** The switch is closed (or, without a switch of ours, the set is watched). */
    ON,
    /** The switch is open again, the rails are followed down. */
    FALLING,
    /** The stream is stopped and drained. */
    STOPPING,
    /** Over. */
    DONE
  }

  private final WatchRun run;
  private Step step = Step.CONNECTING;
  private ProbeMessage.Hello newHello;
  private RunSetup.Settings settings;
  private RailsDown railsDown;
  private String ended;
  private boolean inputEnded;
  private boolean reconnecting;
  private boolean offAsked;
  private long connectSince;
  private long helloSent;
  private long streamSince = -1;
  private long quietSince = -1;
  private int speedTries;
  private int countdownSaid = -1;
  private boolean captureAsked;

  RunSteps(WatchRun run) {
    this.run = run;
    connectSince = nanos();
    helloSent = connectSince - HELLO_NANOS;
  }

  private long nanos() {
    return run.talk().port().time().monotonicNanos();
  }

  /** Where the run stands. */
  public Step current() {
    return step;
  }

  boolean done() {
    return step == Step.DONE;
  }

  /** Whether bytes must keep coming. */
  boolean streaming() {
    return step.ordinal() > Step.STARTING.ordinal() && step != Step.DONE && !reconnecting;
  }

  private void to(Step next) {
    if (step != next) {
      step = next;
      run.progress().step(next);
    }
  }

  /** Does what is due now. */
  void step() throws IOException, RunRefused {
    if (step == Step.CONNECTING || reconnecting) {
      connect();
      return;
    }
    switch (step) {
      case STARTING -> starting();
      case LIMITS -> limits();
      case QUIET -> quiet();
      case ARMING -> arming();
      case CLOSING -> closing();
      case ON -> on();
      case FALLING -> falling();
      case STOPPING -> stopping();
      default -> {
        // CONNECTING is above; DONE does nothing.
      }
    }
  }

  private void connect() throws IOException, RunRefused {
    if (newHello != null) {
      ProbeMessage.Hello hello = newHello;
      newHello = null;
      if (reconnecting) {
        rejoin(hello);
      } else {
        join(hello);
      }
      return;
    }
    long now = nanos();
    if (!reconnecting && now - connectSince >= CONNECT_NANOS) {
      throw new RunRefused(RunRefused.Kind.PROBE, noAnswer());
    }
    if (now - helloSent >= HELLO_NANOS) {
      helloSent = now;
      run.talk()
          .send(new HostMessage.HelloRequest(run.setup().raw() ? LineSpeed.FAST : LineSpeed.SLOW));
    }
  }

  private String noAnswer() {
    String where = run.talk().port().describe();
    var foreign = run.talk().counts().foreignVersion();
    if (foreign.isPresent()) {
      return "the probe box on "
          + where
          + " speaks version "
          + foreign.getAsInt()
          + " of the wire format, this program version 1. Flash the firmware that came with this program.";
    }
    return "no answer from a probe box on "
        + where
        + " within 6 s ("
        + run.talk().counts().bytes()
        + " bytes came). Check that it is the right port, and that the box has power.";
  }

  /** The probe says who it is. */
  void hello(ProbeMessage.Hello message) {
    newHello = message;
  }

  private void join(ProbeMessage.Hello hello) throws IOException, RunRefused {
    if (!run.setup().observe()) {
      checkArmable(hello);
    }
    RunSetup.Settings planned = run.setup().settings().plan(Hellos.of(hello, ""), Set.of());
    run.begin(hello, planned);
    startStream();
  }

  private void checkArmable(ProbeMessage.Hello hello) throws RunRefused {
    int latched = hello.latchedTrip();
    if (latched != 0 && run.setup().restoreTrip() != latched) {
      String cause =
          hello
              .latchedCause()
              .map(c -> c.name().toLowerCase(java.util.Locale.ROOT).replace('_', '-'))
              .orElse("unknown");
      throw new RunRefused(
          RunRefused.Kind.ARMING,
          "the probe box has switched itself off before: number "
              + latched
              + ", cause "
              + cause
              + ". Find out why; then switch on again with `--restore "
              + latched
              + "`.");
    }
    if (latched == 0 && run.setup().restoreTrip() != 0) {
      throw new RunRefused(
          RunRefused.Kind.ARMING,
          "--restore "
              + run.setup().restoreTrip()
              + " was given, but the probe box has not switched itself off. Leave it out.");
    }
    if (new SelfTest(hello.selfTest().bits()).refusesArming()) {
      throw new RunRefused(
          RunRefused.Kind.ARMING,
          "the probe box fails its self-test: " + Refusals.selfTest(hello.selfTest().bits()));
    }
  }

  private void startStream() throws IOException {
    run.translator().streamStarts();
    streamSince = -1;
    run.talk()
        .ask(
            new HostMessage.StreamRequest(run.setup().raw() ? StreamKind.RAW : StreamKind.REDUCED));
    to(Step.STARTING);
  }

  private void starting() throws IOException, RunRefused {
    if (speedLost()) {
      speedTries++;
      run.talk().send(new HostMessage.HelloRequest(LineSpeed.FAST));
      startStream();
      return;
    }
    if (!answered("start the stream")) {
      return;
    }
    if (run.setup().observe()) {
      to(Step.ON);
      return;
    }
    if (streamSince < 0) {
      streamSince = run.translator().lastMicros();
    }
    if (run.chain().latest() == null
        || run.translator().lastMicros() - streamSince < CLIPS_MICROS) {
      return;
    }
    settings = run.setup().settings().plan(run.hello(), openRails());
    run.talk().ask(new HostMessage.SetLimits(settings.limits()));
    to(Step.LIMITS);
  }

  /**
   * The probe had not heard us for a while and was looking for a slower host: tell it the speed
   * again.
   */
  private boolean speedLost() {
    return run.talk().answer() == Conversation.Answer.REFUSED
        && run.talk().refusal().reason() == RefusalReason.TOO_FAST_FOR_LINE
        && speedTries < SPEED_TRIES;
  }

  /** A clip that is joined to nothing reads full scale: over any limit. It is said, not watched. */
  private Set<Integer> openRails() {
    Set<Integer> open = new TreeSet<>();
    for (int rail = 1; rail <= 3; rail++) {
      if (!ReadingFigures.clipOn(run.chain().latest(), rail)) {
        open.add(rail);
      }
    }
    return open;
  }

  private void limits() throws IOException, RunRefused {
    if (answered("set the limits")) {
      quietSince = -1;
      to(Step.QUIET);
    }
  }

  private void quiet() throws IOException {
    long now = run.translator().lastMicros();
    if (quietSince < 0) {
      quietSince = now;
    }
    if (!run.setup().gate().open()) {
      // The countdown begins when the last question is answered; what comes meanwhile is logged.
      quietSince = now;
      return;
    }
    long left = run.setup().quietMicros() - (now - quietSince);
    int seconds = (int) Math.max(0, (left + 999_999) / 1_000_000);
    if (seconds != countdownSaid) {
      countdownSaid = seconds;
      run.progress().countdown(seconds);
    }
    if (left <= 0) {
      run.talk()
          .ask(
              run.setup().restoreTrip() != 0
                  ? new HostMessage.Restore(run.setup().restoreTrip(), settings.look())
                  : new HostMessage.SwitchOn(settings.look()));
      to(Step.ARMING);
    }
  }

  private void arming() throws RunRefused {
    boolean moved =
        run.chain().state() != SwitchState.OFF && run.chain().state() != SwitchState.TRIPPED;
    if (moved || answered("switch on")) {
      to(Step.CLOSING);
    }
  }

  private void closing() {
    SwitchState state = run.chain().state();
    if (state == SwitchState.ON) {
      offAsked = false;
      to(Step.ON);
    } else if (run.chain().offBy() != null
        && (state == SwitchState.OFF || state == SwitchState.TRIPPED)) {
      opened();
    }
  }

  private void on() throws IOException {
    Long closed = run.chain().closedMicros();
    if (!run.setup().observe() && run.chain().state() != SwitchState.ON) {
      opened();
      return;
    }
    Long forMicros = run.setup().forMicros();
    if (forMicros != null
        && closed != null
        && run.translator().lastMicros() - closed >= forMicros) {
      off(OffCause.TIME);
    }
  }

  /** The switch has opened, whoever did it. */
  private void opened() {
    ended =
        ended != null
            ? ended
            : switch (run.chain().offBy()) {
              case TRIP, SILENCE -> "trip";
              case USER, BUTTON, PEDAL, CHASSIS -> "user-off";
              case RULE -> "rule-off";
              case TIME -> inputEnded ? "input-end" : "time";
              case SIGNAL -> "signal";
              case LOOK -> "look";
              case START -> "probe-reset";
            };
    railsDown = new RailsDown(run.setup().effective(), run.translator().lastMicros());
    to(Step.FALLING);
  }

  private void falling() throws IOException {
    long now = run.translator().lastMicros();
    boolean captureMissing = run.chain().trip() != null && run.translator().captureIncomplete();
    if (captureMissing && !captureAsked && now - railsDown.sinceMicros() > CAPTURE_AGAIN_MICROS) {
      captureAsked = true;
      run.talk().send(new HostMessage.SendAgain(Resend.CAPTURE, run.chain().trip().number()));
    }
    if (run.wantsEnd() || railsDown.over(run.chain(), now, captureMissing)) {
      stop();
    }
  }

  private void stop() throws IOException {
    run.talk().ask(new HostMessage.StreamRequest(StreamKind.NONE));
    to(Step.STOPPING);
  }

  private void stopping() {
    if (run.talk().answer() != Conversation.Answer.WAITING) {
      finish();
    }
  }

  private void finish() {
    run.recorder()
        .clock(run.clock().slowPpm(), run.clock().points(), run.translator().lastMicros());
    run.accept(new ProbeEvent.RunEnded(run.translator().lastMicros(), ended));
    to(Step.DONE);
  }

  private boolean answered(String what) throws RunRefused {
    return switch (run.talk().answer()) {
      case ACCEPTED -> true;
      case WAITING, NONE -> false;
      case REFUSED ->
          throw new RunRefused(RunRefused.Kind.ARMING, Refusals.words(run.talk().refusal()));
      case SILENT ->
          throw new RunRefused(
              RunRefused.Kind.PROBE,
              "the probe box on "
                  + run.talk().port().describe()
                  + " does not answer the request to "
                  + what
                  + ". Unplug it, plug it in again, and try once more.");
    };
  }

  /** Opens the switch, at whatever step. */
  void off(OffCause by) throws IOException {
    switch (step) {
      case CONNECTING -> to(Step.DONE);
      case STARTING, LIMITS, QUIET -> endBeforeClosing(by);
      case ARMING, CLOSING, ON -> {
        if (run.setup().observe()) {
          endBeforeClosing(by);
        } else if (!offAsked) {
          offAsked = true;
          run.talk().ask(new HostMessage.SwitchOff(SwitchCause.valueOf(by.name())));
          to(step == Step.ARMING ? Step.CLOSING : step);
        }
      }
      default -> {
        // It is open already.
      }
    }
  }

  private void endBeforeClosing(OffCause by) throws IOException {
    ended =
        by == OffCause.SIGNAL
            ? "signal"
            : by == OffCause.TIME ? inputEnded ? "input-end" : "time" : "user-off";
    stop();
  }

  /** What is behind an emulated probe is over. */
  void inputEnded() throws IOException {
    if (!inputEnded && step == Step.ON) {
      inputEnded = true;
      off(OffCause.TIME);
    }
  }

  /** The line is gone for good. */
  void linkLost() {
    ended = "link-lost";
    if (run.chain() != null) {
      finish();
    }
    to(Step.DONE);
  }

  /** The line is open again: find out whether it is the same probe, still on. */
  void lineBack() {
    reconnecting = step != Step.CONNECTING;
    connectSince = nanos();
    helloSent = connectSince - HELLO_NANOS;
    newHello = null;
  }

  private void rejoin(ProbeMessage.Hello hello) throws IOException {
    reconnecting = false;
    run.accept(
        new ProbeEvent.LinkChanged(
            run.now(), ProbeEvent.LinkState.RESTORED, "the probe box is back"));
    SwitchState there = FrameTranslator.state(hello.state().code());
    if (step == Step.ON && there == SwitchState.TRIPPED && hello.latchedTrip() != 0) {
      run.talk().send(new HostMessage.SendAgain(Resend.TRIP, hello.latchedTrip()));
      run.talk().send(new HostMessage.SendAgain(Resend.CAPTURE, hello.latchedTrip()));
      run.accept(new ProbeEvent.SwitchChanged(run.now(), SwitchState.TRIPPED, OffCause.TRIP));
    } else if (step == Step.ON && there != SwitchState.ON) {
      run.accept(new ProbeEvent.SwitchChanged(run.now(), SwitchState.OFF, OffCause.SILENCE));
    }
    if (step == Step.ON || step == Step.FALLING) {
      run.talk()
          .ask(
              new HostMessage.StreamRequest(
                  run.setup().raw() ? StreamKind.RAW : StreamKind.REDUCED));
    } else {
      ended = "link-lost";
      stop();
    }
  }

  /** Another start of the probe: whatever was on is off, and nothing is armed again by itself. */
  void probeRestarted(ProbeMessage.Hello hello) {
    boolean wasOn =
        run.chain().state() != SwitchState.OFF && run.chain().state() != SwitchState.TRIPPED;
    long at = run.now();
    run.translator().restarted(at);
    run.clock().reset();
    run.restartedAs(hello);
    reconnecting = false;
    run.accept(
        new ProbeEvent.LinkChanged(
            at,
            ProbeEvent.LinkState.PROBE_RESTARTED,
            "the probe box was restarted; its switch is off"));
    if (wasOn) {
      run.accept(new ProbeEvent.SwitchChanged(at, SwitchState.OFF, OffCause.START));
    }
    ended = "probe-reset";
    try {
      if (step == Step.ON || step == Step.FALLING || step == Step.CLOSING || step == Step.ARMING) {
        railsDown = new RailsDown(run.setup().effective(), at);
        to(Step.FALLING);
        run.talk()
            .ask(
                new HostMessage.StreamRequest(
                    run.setup().raw() ? StreamKind.RAW : StreamKind.REDUCED));
      } else if (step != Step.DONE) {
        stop();
      }
    } catch (IOException gone) {
      linkLost();
    }
  }

  /** Whether this result of the look says that the switch itself is in doubt. */
  public static boolean isSwitchInDoubt(String result) {
    return Look.Result.CURRENT_WHILE_OFF.id().equals(result)
        || Look.Result.VOLTS_STAY.id().equals(result);
  }
}
