package firstamp.run;

import firstamp.model.ProbeEvent;
import firstamp.model.SwitchState;
import firstamp.pipeline.PlannedSettings;
import firstamp.pipeline.ReadingFigures;
import firstamp.pipeline.RunRefused;
import firstamp.protocol.HostMessage;
import firstamp.protocol.LineSpeed;
import firstamp.protocol.PedalDuty;
import firstamp.protocol.RefusalReason;
import firstamp.protocol.StreamKind;
import firstamp.run.questions.ArmGate;
import firstamp.run.talk.Conversation;
import firstamp.run.talk.Refusals;
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

  private final WatchRun run;
  private final OtherFeed otherFeed;
  private PlannedSettings settings;
  private Set<Integer> openRails = Set.of();
  private long streamSince = -1;
  private long quietSince = -1;
  private int speedTries;
  private int countdownSaid = -1;
  private boolean pedalTold;
  private long takenBackMicros = Long.MIN_VALUE;

  Arming(WatchRun run) {
    this.run = run;
    this.otherFeed = new OtherFeed(run);
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
    run.translator().streamStarts();
    streamSince = -1;
    run.talk()
        .ask(
            new HostMessage.StreamRequest(run.setup().raw() ? StreamKind.RAW : StreamKind.REDUCED));
  }

  /** Does what is due at this step; gives the step that follows, or the same one. */
  RunSteps.Step next(RunSteps.Step step) throws IOException, RunRefused {
    return switch (step) {
      case STARTING -> starting();
      case LIMITS -> limits();
      case QUIET -> quiet();
      case ARMING -> arming();
      default -> throw new IllegalArgumentException("step " + step + ", expected one of arming");
    };
  }

  private RunSteps.Step starting() throws IOException, RunRefused {
    if (speedLost()) {
      speedTries++;
      run.talk().send(new HostMessage.HelloRequest(LineSpeed.FAST));
      startStream();
      return RunSteps.Step.STARTING;
    }
    if (!answered("start the stream")) {
      return RunSteps.Step.STARTING;
    }
    if (run.setup().observe()) {
      return RunSteps.Step.ON;
    }
    if (streamSince < 0) {
      streamSince = run.translator().lastMicros();
      run.talk().send(new HostMessage.ReadClips());
    }
    if (run.chain().latest() == null
        || run.translator().lastMicros() - streamSince < CLIPS_MICROS) {
      return RunSteps.Step.STARTING;
    }
    openRails = findOpenRails();
    run.setup().gate().clips(openRails);
    settings = run.setup().settings().plan(run.hello(), openRails);
    pedalTold = false;
    run.talk().ask(new HostMessage.SetPedal(PedalDuty.values()[run.setup().pedal().ordinal()]));
    return RunSteps.Step.LIMITS;
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

  /**
   * A clip that is joined to nothing reads full scale, or the probe has found it open when it read
   * the clips back: it is said, not watched.
   */
  private Set<Integer> findOpenRails() {
    Set<Integer> open = new TreeSet<>();
    for (int rail = 1; rail <= 3; rail++) {
      if (!ReadingFigures.clipOn(run.chain().latest(), rail) || !run.clips().railJoined(rail)) {
        open.add(rail);
      }
    }
    return open;
  }

  /** The pedal's job first, then the limits: the box keeps both by itself. */
  private RunSteps.Step limits() throws IOException, RunRefused {
    if (!answered(pedalTold ? "set the limits" : "give the pedal its job")) {
      return RunSteps.Step.LIMITS;
    }
    if (!pedalTold) {
      pedalTold = true;
      run.talk().ask(new HostMessage.SetLimits(settings.limits()));
      return RunSteps.Step.LIMITS;
    }
    quietSince = -1;
    return RunSteps.Step.QUIET;
  }

  private RunSteps.Step quiet() throws IOException, RunRefused {
    long now = run.translator().lastMicros();
    if (quietSince < 0) {
      quietSince = now;
    }
    boolean asking = run.limitMoves().step(openRails);
    askAboutLog();
    if (!run.setup().gate().open()) {
      // The countdown begins when the last question is answered; what comes meanwhile is logged.
      return waits(now);
    }
    if (otherFeed.waits(openRails)) {
      return waits(now);
    }
    if (!run.supplyReady()) {
      // The countdown begins when the supply gives what the set needs.
      return waits(now);
    }
    if (asking) {
      return RunSteps.Step.QUIET;
    }
    long left = run.setup().quietMicros() - (now - quietSince);
    int seconds = (int) Math.max(0, (left + 999_999) / 1_000_000);
    if (seconds != countdownSaid) {
      countdownSaid = seconds;
      run.progress().countdown(seconds);
    }
    if (left > 0) {
      return RunSteps.Step.QUIET;
    }
    for (ProbeEvent.Told told : run.setup().gate().told(run.now())) {
      run.accept(told);
    }
    run.talk()
        .ask(
            run.setup().restoreTrip() != 0
                ? new HostMessage.Restore(run.setup().restoreTrip(), settings.look())
                : new HostMessage.SwitchOn(settings.look()));
    return RunSteps.Step.ARMING;
  }

  /** No countdown runs: it begins anew when nothing is waited for any more. */
  private RunSteps.Step waits(long now) {
    quietSince = now;
    if (countdownSaid >= 0) {
      countdownSaid = -1;
      run.progress().countdown(0);
    }
    return RunSteps.Step.QUIET;
  }

  /** A person stops it: the go is asked for again. False = it has to end instead. */
  boolean takeBack() {
    long now = run.translator().lastMicros();
    boolean same = run.setup().gate().takenBack() && now - takenBackMicros < SAME_STROKE_MICROS;
    if (!same && !run.setup().gate().takeBack()) {
      return false;
    }
    takenBackMicros = same ? takenBackMicros : now;
    waits(now);
    return true;
  }

  /**
   * What is not kept is not switched on unasked: the next power-up has nothing to be held against.
   */
  private void askAboutLog() throws RunRefused {
    ArmGate gate = run.setup().gate();
    if (run.recorder().logging()) {
      gate.withdraw(ArmGate.NOT_LOGGING);
    } else if (!gate.ask(ArmGate.NOT_LOGGING, run.recorder().trouble())) {
      throw new RunRefused(
          RunRefused.Kind.LOG,
          "the bench log cannot be written, so nothing was switched on. "
              + run.recorder().trouble());
    }
  }

  private RunSteps.Step arming() throws RunRefused {
    boolean moved =
        run.chain().state() != SwitchState.OFF && run.chain().state() != SwitchState.TRIPPED;
    return moved || answered("switch on") ? RunSteps.Step.CLOSING : RunSteps.Step.ARMING;
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
}
