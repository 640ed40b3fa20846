package firstamp.run;

import firstamp.model.ProbeEvent;
import firstamp.model.SwitchState;
import firstamp.pipeline.PlannedSettings;
import firstamp.pipeline.ReadingFigures;
import firstamp.pipeline.RunRefused;
import firstamp.protocol.codes.LineSpeed;
import firstamp.protocol.codes.RefusalReason;
import firstamp.protocol.codes.StreamKind;
import firstamp.protocol.message.HostMessage;
import firstamp.run.questions.ArmGate;
import firstamp.run.talk.Conversation;
import firstamp.run.talk.Refusals;
import firstamp.run.talk.WireTerms;
import java.io.IOException;
import java.util.Set;
import java.util.TreeSet;

/**
 * From the stream's start to the request to switch on.
 *
 * <p>Not thread-safe: belongs to the session thread.
 */
final class Arming {
  private static final long CLIPS_MICROS = 200_000;
  private static final int SPEED_TRIES = 3;

  /** A second stroke within this time belongs to the first one. */
  private static final long SAME_STROKE_MICROS = 1_000_000;

  private final RunStream stream;
  private final LimitMoves limitMoves;
  private final SupplyController supplyHand;
  private final OtherFeed otherFeed;
  private final LevelClipCheck levelClips;
  private PlannedSettings settings;
  private Set<Integer> openRails = Set.of();
  private long streamSince = -1;
  private long quietSince = -1;
  private int speedTries;
  private int countdownSaid = -1;
  private boolean pedalTold;
  private long takenBackMicros = Long.MIN_VALUE;

  /**
   * Before the stream's start.
   *
   * @param limitMoves bring moved limits to the probe while the switch is open
   * @param supplyHand gives what the set needs, null = a person does
   * @param levelClips tells which clips of head and meter are joined
   */
  Arming(
      RunStream stream,
      LimitMoves limitMoves,
      SupplyController supplyHand,
      LevelClipCheck levelClips) {
    this.stream = stream;
    this.levelClips = levelClips;
    this.limitMoves = limitMoves;
    this.supplyHand = supplyHand;
    this.otherFeed = new OtherFeed(stream);
  }

  /** What the probe was told last; null before. */
  PlannedSettings settings() {
    return settings;
  }

  /** Inputs whose clip was joined to nothing when the limits were planned. */
  Set<Integer> openRails() {
    return openRails;
  }

  /** Asks for the stream. */
  void startStream() throws IOException {
    stream.translator().streamStarts();
    streamSince = -1;
    stream
        .talk()
        .ask(
            new HostMessage.StreamRequest(
                stream.setup().raw() ? StreamKind.RAW : StreamKind.REDUCED));
  }

  /** Does what is due at this step; gives the step that follows, or the same one. */
  RunStep next(RunStep step) throws IOException, RunRefused {
    return switch (step) {
      case STARTING -> starting();
      case LIMITS -> limits();
      case QUIET -> quiet();
      case ARMING -> arming();
      default -> throw new IllegalArgumentException("step " + step + ", expected one of arming");
    };
  }

  private RunStep starting() throws IOException, RunRefused {
    if (speedLost()) {
      speedTries++;
      stream.talk().send(new HostMessage.HelloRequest(LineSpeed.FAST));
      startStream();
      return RunStep.STARTING;
    }
    if (!answered("start-stream")) {
      return RunStep.STARTING;
    }
    if (stream.setup().observe()) {
      return RunStep.ON;
    }
    if (streamSince < 0) {
      streamSince = stream.translator().lastMicros();
      stream.talk().send(new HostMessage.ReadClips());
    }
    if (stream.chain().latest() == null
        || stream.translator().lastMicros() - streamSince < CLIPS_MICROS) {
      return RunStep.STARTING;
    }
    openRails = findOpenRails();
    levelClips.tell();
    stream.setup().gate().clips(openRails);
    settings = stream.setup().settings().plan(stream.hello(), openRails);
    pedalTold = false;
    stream.talk().ask(new HostMessage.SetPedal(WireTerms.pedal(stream.setup().pedal())));
    return RunStep.LIMITS;
  }

  /**
   * The probe had not heard us for a while and was looking for a slower host: tell it the speed
   * again.
   */
  private boolean speedLost() {
    return stream.talk().answer() == Conversation.Answer.REFUSED
        && stream.talk().refusal().reason() == RefusalReason.TOO_FAST_FOR_LINE
        && speedTries < SPEED_TRIES;
  }

  /**
   * A clip that is joined to nothing reads full scale, or the probe has found it open when it read
   * the clips back: it is reported, not watched.
   */
  private Set<Integer> findOpenRails() {
    Set<Integer> open = new TreeSet<>();
    for (int rail = 1; rail <= 3; rail++) {
      if (!ReadingFigures.clipOn(stream.chain().latest(), rail)
          || !stream.clips().railJoined(rail)) {
        open.add(rail);
      }
    }
    return open;
  }

  /** The pedal's job first, then the limits: the box keeps both by itself. */
  private RunStep limits() throws IOException, RunRefused {
    if (!answered(pedalTold ? "set the limits" : "give the pedal its job")) {
      return RunStep.LIMITS;
    }
    if (!pedalTold) {
      pedalTold = true;
      stream.talk().ask(new HostMessage.SetLimits(settings.limits()));
      return RunStep.LIMITS;
    }
    quietSince = -1;
    return RunStep.QUIET;
  }

  private RunStep quiet() throws IOException, RunRefused {
    long now = stream.translator().lastMicros();
    if (quietSince < 0) {
      quietSince = now;
    }
    boolean asking = limitMoves.step(openRails);
    askAboutLog();
    if (!stream.setup().gate().open()) {
      // The countdown begins when the last question is answered; what comes meanwhile is logged.
      return waits(now);
    }
    if (otherFeed.waits(openRails)) {
      return waits(now);
    }
    if (supplyHand != null && !supplyHand.ready()) {
      // The countdown begins when the supply gives what the set needs.
      return waits(now);
    }
    if (asking) {
      return RunStep.QUIET;
    }
    long left = stream.setup().quietMicros() - (now - quietSince);
    int seconds = (int) Math.max(0, (left + 999_999) / 1_000_000);
    if (seconds != countdownSaid) {
      countdownSaid = seconds;
      stream.progress().countdown(seconds);
    }
    if (left > 0) {
      return RunStep.QUIET;
    }
    for (ProbeEvent.Told told : stream.setup().gate().told(stream.now())) {
      stream.accept(told);
    }
    stream
        .talk()
        .ask(
            stream.setup().restoreTrip() != 0
                ? new HostMessage.Restore(stream.setup().restoreTrip(), settings.look())
                : new HostMessage.SwitchOn(settings.look()));
    return RunStep.ARMING;
  }

  /** No countdown runs: it restarts once nothing is waited for any more. */
  private RunStep waits(long now) {
    quietSince = now;
    if (countdownSaid >= 0) {
      countdownSaid = -1;
      stream.progress().countdown(0);
    }
    return RunStep.QUIET;
  }

  /** A person stops it: the go is asked for again. False = it has to end instead. */
  boolean takeBack() {
    long now = stream.translator().lastMicros();
    boolean same = stream.setup().gate().takenBack() && now - takenBackMicros < SAME_STROKE_MICROS;
    if (!same && !stream.setup().gate().takeBack()) {
      return false;
    }
    takenBackMicros = same ? takenBackMicros : now;
    waits(now);
    return true;
  }

  /**
   * Without a log the set is not switched on unless the person agrees: there would be nothing to
   * compare the next power-up with.
   */
  private void askAboutLog() throws RunRefused {
    ArmGate gate = stream.setup().gate();
    if (stream.recorder().logging()) {
      gate.withdraw(ArmGate.NOT_LOGGING);
    } else if (!gate.ask(ArmGate.NOT_LOGGING, stream.recorder().trouble())) {
      throw new RunRefused(
          RunRefused.Kind.LOG, Refusals.say("no-log", stream.recorder().trouble()));
    }
  }

  private RunStep arming() throws RunRefused {
    boolean moved =
        stream.chain().state() != SwitchState.OFF && stream.chain().state() != SwitchState.TRIPPED;
    return moved || answered("switch-on") ? RunStep.CLOSING : RunStep.ARMING;
  }

  private boolean answered(String what) throws RunRefused {
    return switch (stream.talk().answer()) {
      case ACCEPTED -> true;
      case WAITING, NONE -> false;
      case REFUSED ->
          throw new RunRefused(RunRefused.Kind.ARMING, Refusals.words(stream.talk().refusal()));
      case SILENT ->
          throw new RunRefused(
              RunRefused.Kind.PROBE,
              Refusals.say("silent." + what, stream.talk().port().describe()));
    };
  }
}
