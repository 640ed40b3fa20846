package firstamp.run;

import firstamp.model.OffCause;
import firstamp.model.ProbeEvent;
import firstamp.model.SwitchState;
import firstamp.pipeline.RailsDown;
import firstamp.pipeline.RunRefused;
import firstamp.protocol.codes.Resend;
import firstamp.protocol.codes.StreamKind;
import firstamp.protocol.codes.SwitchCause;
import firstamp.protocol.message.HostMessage;
import firstamp.protocol.message.ProbeMessage;
import firstamp.run.talk.Conversation;
import firstamp.run.talk.WireTerms;
import java.io.IOException;

/**
 * The steps of a live run, one after the other; each call of {@link #step()} does what is due now
 * and returns.
 *
 * <p>Not thread-safe: belongs to the session thread.
 */
public final class RunSteps {
  private static final long CAPTURE_AGAIN_MICROS = 700_000;

  private final RunStream stream;
  private final RunWishes wishes;
  private final LimitMoves limitMoves;
  private final BringUp bringUp;
  private final Greeting greeting;
  private final Arming arming;
  private final LevelClipCheck levelClips;
  private RunStep step = RunStep.CONNECTING;
  private RailsDown railsDown;
  private String ended;
  private boolean inputEnded;
  private boolean reconnecting;
  private OffCause offBy;
  private boolean offSent;
  private boolean captureAsked;

  /**
   * At the first step; the line is open.
   *
   * @param supplyHand gives what the set needs, null = a person does
   * @param bringUp goes through the steps of the sheet, null = there are none
   */
  RunSteps(
      RunStream stream,
      RunWishes wishes,
      LimitMoves limitMoves,
      SupplyController supplyHand,
      BringUp bringUp) {
    this.stream = stream;
    this.wishes = wishes;
    this.limitMoves = limitMoves;
    this.bringUp = bringUp;
    greeting = new Greeting(stream);
    levelClips = new LevelClipCheck(stream);
    arming = new Arming(stream, limitMoves, supplyHand, levelClips);
  }

  /** Where the run stands. */
  public RunStep current() {
    return step;
  }

  boolean done() {
    return step == RunStep.DONE;
  }

  /** Whether the switch is open and will be closed unless somebody stops it. */
  boolean mayClose() {
    return step.ordinal() < RunStep.ON.ordinal() && offBy == null;
  }

  /** Whether bytes must keep coming. */
  boolean streaming() {
    return step.ordinal() > RunStep.STARTING.ordinal() && step != RunStep.DONE && !reconnecting;
  }

  /** Whether the probe has yet to say again who it is. */
  boolean reconnecting() {
    return reconnecting;
  }

  private void to(RunStep next) {
    if (step != next) {
      step = next;
      stream.progress().step(next);
    }
  }

  /** Does what is due now. */
  void step() throws IOException, RunRefused {
    if (step == RunStep.CONNECTING || reconnecting) {
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
      if (reconnecting && wishes.wantsEnd()) {
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
    if (!stream.setup().observe()) {
      ArmCheck.check(found.hello(), stream.setup().restoreTrip());
    }
    stream.begin(found);
    arming.startStream();
    to(RunStep.STARTING);
  }

  private void closing() throws IOException {
    insistOnOff();
    SwitchState state = stream.chain().state();
    if (state == SwitchState.ON) {
      to(RunStep.ON);
    } else if (stream.chain().offBy() != null
        && (state == SwitchState.OFF || state == SwitchState.TRIPPED)) {
      opened();
    }
  }

  private void on() throws IOException {
    insistOnOff();
    Long closed = stream.chain().closedMicros();
    if (!stream.setup().observe() && stream.chain().state() != SwitchState.ON) {
      opened();
      return;
    }
    if (offBy == null && !stream.setup().observe()) {
      limitMoves.step(arming.openRails());
    }
    if (bringUp != null && bringUp.done()) {
      off(OffCause.TIME);
      return;
    }
    Long forMicros = stream.setup().forMicros();
    if (forMicros != null
        && closed != null
        && stream.translator().lastMicros() - closed >= forMicros) {
      off(OffCause.TIME);
    }
  }

  /** The switch has opened, whoever did it. */
  private void opened() {
    ended =
        ended != null
            ? ended
            : switch (stream.chain().offBy()) {
              case TRIP, SILENCE -> "trip";
              case USER, BUTTON, PEDAL, CHASSIS -> "user-off";
              case RULE -> "rule-off";
              case TIME -> inputEnded ? "input-end" : "time";
              case SIGNAL -> "signal";
              case LOOK -> "look";
              case START -> "probe-reset";
            };
    railsDown = new RailsDown(stream.setup().effective(), stream.translator().lastMicros());
    to(RunStep.FALLING);
  }

  private void falling() throws IOException {
    long now = stream.translator().lastMicros();
    boolean captureMissing =
        stream.chain().trip() != null && stream.translator().captureIncomplete();
    if (captureMissing && !captureAsked && now - railsDown.sinceMicros() > CAPTURE_AGAIN_MICROS) {
      captureAsked = true;
      stream.talk().send(new HostMessage.SendAgain(Resend.CAPTURE, stream.chain().trip().number()));
    }
    if (wishes.wantsEnd() || railsDown.over(stream.chain(), now, captureMissing)) {
      stop();
    }
  }

  private void stop() throws IOException {
    stream.talk().ask(new HostMessage.StreamRequest(StreamKind.NONE));
    to(RunStep.STOPPING);
  }

  /** The stream has stopped; then the clips are read back, which would move what it shows. */
  private void stopping() throws IOException {
    if (stream.talk().answer() != Conversation.Answer.WAITING && levelClips.readAgain()) {
      finish();
    }
  }

  private void finish() {
    stream
        .recorder()
        .clock(stream.clock().slowPpm(), stream.clock().points(), stream.translator().lastMicros());
    stream.settleLog();
    stream.accept(new ProbeEvent.RunEnded(stream.translator().lastMicros(), ended));
    to(RunStep.DONE);
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
    limitMoves.forget();
    switch (step) {
      case CONNECTING -> to(RunStep.DONE);
      case STARTING, LIMITS, QUIET -> {
        if (over || by != OffCause.USER || !arming.takeBack()) {
          endBeforeClosing(by);
        }
      }
      case ARMING, CLOSING, ON -> {
        if (stream.setup().observe()) {
          endBeforeClosing(by);
        } else if (offBy == null) {
          offBy = by;
          askOff();
          to(step == RunStep.ARMING ? RunStep.CLOSING : step);
        }
      }
      default -> {
        // It is open already.
      }
    }
  }

  private void askOff() throws IOException {
    offSent = false;
    stream.talk().ask(new HostMessage.SwitchOff(SwitchCause.valueOf(offBy.name())));
    offSent = true;
  }

  /** Repeats the command to open the switch for as long as it is not open. */
  private void insistOnOff() throws IOException {
    if (offBy == null || stream.setup().observe()) {
      return;
    }
    Conversation.Answer answer = stream.talk().answer();
    if (!offSent || answer == Conversation.Answer.SILENT || answer == Conversation.Answer.REFUSED) {
      askOff();
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
    if (!inputEnded && step == RunStep.ON) {
      inputEnded = true;
      off(OffCause.TIME);
    }
  }

  /** The line is gone for good. */
  void linkLost() {
    ended = "link-lost";
    if (stream.chain() != null) {
      finish();
    }
    to(RunStep.DONE);
  }

  /** The line is open again, or in doubt: find out whether it is the same probe, still on. */
  void whoIsThere() {
    reconnecting = step != RunStep.CONNECTING;
    greeting.again();
  }

  private void rejoin(ProbeMessage.Hello hello) throws IOException {
    reconnecting = false;
    offSent = false;
    stream.accept(
        new ProbeEvent.LinkChanged(
            stream.now(), ProbeEvent.LinkState.RESTORED, "the probe box is back"));
    SwitchState there = WireTerms.state(hello.state());
    if (step == RunStep.ON && there == SwitchState.TRIPPED && hello.latchedTrip() != 0) {
      stream.talk().send(new HostMessage.SendAgain(Resend.TRIP, hello.latchedTrip()));
      stream.talk().send(new HostMessage.SendAgain(Resend.CAPTURE, hello.latchedTrip()));
      stream.accept(new ProbeEvent.SwitchChanged(stream.now(), SwitchState.TRIPPED, OffCause.TRIP));
    } else if (step == RunStep.ON && there != SwitchState.ON) {
      stream.accept(new ProbeEvent.SwitchChanged(stream.now(), SwitchState.OFF, OffCause.SILENCE));
    }
    if (offBy != null && there == SwitchState.ON) {
      stream.talk().send(new HostMessage.SwitchOff(SwitchCause.valueOf(offBy.name())));
    }
    if (step == RunStep.ON || step == RunStep.FALLING) {
      stream
          .talk()
          .ask(
              new HostMessage.StreamRequest(
                  stream.setup().raw() ? StreamKind.RAW : StreamKind.REDUCED));
    } else {
      ended = "link-lost";
      stop();
    }
  }

  /** Another start of the probe: whatever was on is off, and nothing is armed again by itself. */
  void probeRestarted(ProbeMessage.Hello hello) {
    boolean wasOn =
        stream.chain().state() != SwitchState.OFF && stream.chain().state() != SwitchState.TRIPPED;
    long at = stream.now();
    stream.translator().restarted(at);
    stream.clock().reset();
    stream.restartedAs(hello);
    reconnecting = false;
    stream.accept(
        new ProbeEvent.LinkChanged(
            at,
            ProbeEvent.LinkState.PROBE_RESTARTED,
            "the probe box was restarted; its switch is off"));
    if (wasOn) {
      stream.accept(new ProbeEvent.SwitchChanged(at, SwitchState.OFF, OffCause.START));
    }
    ended = "probe-reset";
    try {
      if (step == RunStep.ON
          || step == RunStep.FALLING
          || step == RunStep.CLOSING
          || step == RunStep.ARMING) {
        railsDown = new RailsDown(stream.setup().effective(), at);
        to(RunStep.FALLING);
        stream
            .talk()
            .ask(
                new HostMessage.StreamRequest(
                    stream.setup().raw() ? StreamKind.RAW : StreamKind.REDUCED));
      } else if (step != RunStep.DONE) {
        stop();
      }
    } catch (IOException gone) {
      linkLost();
    }
  }
}
