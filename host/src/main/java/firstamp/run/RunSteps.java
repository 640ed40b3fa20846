package firstamp.run;

import firstamp.model.Look;
import firstamp.model.OffCause;
import firstamp.model.ProbeEvent;
import firstamp.model.SwitchState;
import firstamp.pipeline.RailsDown;
import firstamp.pipeline.RunRefused;
import firstamp.protocol.HostMessage;
import firstamp.protocol.ProbeMessage;
import firstamp.protocol.Resend;
import firstamp.protocol.StreamKind;
import firstamp.protocol.SwitchCause;
import firstamp.run.talk.Conversation;
import firstamp.run.talk.FrameTranslator;
import java.io.IOException;

/**
 * The steps of a live run, one after the other; each call of {@link #step()} does what is due now
 * and returns.
 *
 * <p>Not thread-safe: belongs to the session thread.
 */
public final class RunSteps {
  private static final long CAPTURE_AGAIN_MICROS = 700_000;

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
  private final Greeting greeting;
  private final Arming arming;
  private Step step = Step.CONNECTING;
  private RailsDown railsDown;
  private String ended;
  private boolean inputEnded;
  private boolean reconnecting;
  private boolean offAsked;
  private boolean captureAsked;

  RunSteps(WatchRun run) {
    this.run = run;
    greeting = new Greeting(run);
    arming = new Arming(run);
  }

  /** Where the run stands. */
  public Step current() {
    return step;
  }

  boolean done() {
    return step == Step.DONE;
  }

  /** Whether the switch is open and will be closed unless somebody stops it. */
  boolean mayClose() {
    return step.ordinal() < Step.ON.ordinal() && !offAsked;
  }

  /** Whether bytes must keep coming. */
  boolean streaming() {
    return step.ordinal() > Step.STARTING.ordinal() && step != Step.DONE && !reconnecting;
  }

  /** Whether the probe has yet to say again who it is. */
  boolean reconnecting() {
    return reconnecting;
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
      case STARTING, LIMITS, QUIET, ARMING -> to(arming.next(step));
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
    Greeting.Found found = greeting.poll(reconnecting);
    if (found == null) {
      if (reconnecting && run.wantsEnd()) {
        linkLost();
      }
      return;
    }
    if (reconnecting) {
      rejoin(found.hello());
    } else {
      join(found);
    }
  }

  /** The probe says who it is. */
  void hello(ProbeMessage.Hello message) {
    greeting.hello(message);
  }

  /** The probe says what it keeps of its calibration. */
  void calibration(ProbeMessage.Calibration message) {
    greeting.calibration(message);
  }

  private void join(Greeting.Found found) throws IOException, RunRefused {
    if (!run.setup().observe()) {
      ArmCheck.check(found.hello(), run.setup().restoreTrip());
    }
    run.begin(found);
    arming.startStream();
    to(Step.STARTING);
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
    if (!offAsked && !run.setup().observe()) {
      run.limitMoves().step(arming.openRails());
    }
    if (run.bringUpDone()) {
      off(OffCause.TIME);
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
    run.settleLog();
    run.accept(new ProbeEvent.RunEnded(run.translator().lastMicros(), ended));
    to(Step.DONE);
  }

  /** Opens the switch for good, at whatever step. */
  void off(OffCause by) throws IOException {
    off(by, true);
  }

  /**
   * Opens the switch, at whatever step.
   *
   * @param over for good: a countdown that a person stops does not ask for another go
   */
  void off(OffCause by, boolean over) throws IOException {
    run.limitMoves().forget();
    switch (step) {
      case CONNECTING -> to(Step.DONE);
      case STARTING, LIMITS, QUIET -> {
        if (over || by != OffCause.USER || !arming.takeBack()) {
          endBeforeClosing(by);
        }
      }
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

  /** The line is open again, or in doubt: find out whether it is the same probe, still on. */
  void whoIsThere() {
    reconnecting = step != Step.CONNECTING;
    greeting.again();
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

  /** Whether this result of the look says that the probe's own switch or inputs are in doubt. */
  public static boolean isSwitchInDoubt(String result) {
    return Look.Result.CURRENT_WHILE_OFF.id().equals(result)
        || Look.Result.VOLTS_STAY.id().equals(result)
        || Look.Result.NO_ZERO.id().equals(result)
        || Look.Result.SHUNT.id().equals(result)
        || Look.Result.LIMITER.id().equals(result);
  }
}
