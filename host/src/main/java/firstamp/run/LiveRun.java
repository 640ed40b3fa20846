package firstamp.run;

import firstamp.model.Alarm;
import firstamp.model.Happening;
import firstamp.model.OffCause;
import firstamp.model.OffReason;
import firstamp.model.ProbeEvent;
import firstamp.model.ProbeHello;
import firstamp.model.Summary;
import firstamp.model.SwitchState;
import firstamp.model.samples.Reading;
import firstamp.model.text.Worded;
import firstamp.pipeline.Chain;
import firstamp.pipeline.ChainListener;
import firstamp.pipeline.ForwardingChainListener;
import firstamp.pipeline.RunRefused;
import firstamp.protocol.codes.PressKind;
import firstamp.protocol.codes.PressSource;
import firstamp.protocol.codes.SwitchCause;
import firstamp.protocol.message.HostMessage;
import firstamp.protocol.message.ProbeMessage;
import firstamp.run.talk.Conversation;
import firstamp.run.talk.FrameTranslator;
import firstamp.run.talk.PortOpener;
import firstamp.run.talk.Refusals;
import firstamp.supply.BenchSupply;
import java.io.IOException;

/**
 * One live power-up, from the first hello to the last conversion: connects, arms, watches, switches
 * off, follows the rails down.
 *
 * <p>{@link #run()} is the session thread. {@link #off}, {@link #mark} and {@link #acknowledge} may
 * be called from any thread.
 */
public final class LiveRun {
  private static final int POLL_MILLIS = 20;

  private final PortOpener opener;
  private final RunWishes wishes = new RunWishes();
  private final RunStream stream;
  private final LimitMoves limitMoves;
  private final Modes modes;
  private RunSteps steps;
  private SupplyController supplyHand;
  private BringUp bringUp;
  private boolean staged;

  /**
   * A run that has not started.
   *
   * @param setup what to do
   * @param opener of the line
   * @param recorder keeps the stream
   * @param listener told what the chain finds
   * @param progress told how the run gets on
   */
  public LiveRun(
      RunSetup setup,
      PortOpener opener,
      Recorder recorder,
      ChainListener listener,
      RunProgress progress) {
    this.opener = opener;
    this.stream = new RunStream(setup, recorder, new Outwards(listener), progress);
    this.modes = new Modes(stream, wishes, this::move);
    this.limitMoves = new LimitMoves(stream, modes::answer);
  }

  private void move(LimitMove move) {
    limitMoves.want(move);
  }

  /**
   * Opens the switch and ends the run after the rails are down; a countdown is stopped, and where
   * somebody answers the go is asked for again. Safe from any thread, and more than once.
   */
  public void off(OffCause by) {
    wishes.off(by);
  }

  /** The same for good: after a countdown that this stops nothing is asked again. */
  public void over(OffCause by) {
    wishes.over(by);
  }

  /** Puts a mark at the present probe time. */
  public void mark(String text) {
    wishes.later(() -> stream.accept(new ProbeEvent.Marked(stream.now(), text)));
  }

  /** Says what was done to the set: a clip moved, record on, something changed. */
  public void happened(Happening what) {
    wishes.later(() -> stream.accept(new ProbeEvent.Happened(stream.now(), what)));
  }

  /** Puts words to an earlier mark; 1 = the first one. */
  public void note(int mark, String text) {
    wishes.later(() -> stream.accept(new ProbeEvent.Noted(stream.now(), mark, text)));
  }

  /** Keeps why it was switched off. */
  public void explainOff(OffReason reason) {
    wishes.later(() -> stream.accept(new ProbeEvent.OffExplained(stream.now(), reason)));
  }

  /** Asks the probe for another limit, as soon as it can be asked. */
  public void limit(LimitMove move) {
    wishes.later(() -> limitMoves.want(move));
  }

  /**
   * Asks for another mode, as soon as it makes sense.
   *
   * @param awakeProblem why the computer may fall asleep, null = it is kept awake
   * @param soakMicros how long to soak, 0 = two hours
   */
  public void mode(BenchMode mode, Worded awakeProblem, long soakMicros) {
    wishes.later(() -> modes.want(mode, awakeProblem, soakMicros));
  }

  /**
   * Lets a bench supply give what the set needs, off as soon as the switch is open. Before {@link
   * #run()}; the run closes it.
   *
   * @param supply started
   * @param volts to begin with
   * @param limitA to begin with
   */
  public void supply(BenchSupply supply, double volts, double limitA) {
    supplyHand = new SupplyController(stream, wishes, supply, volts, limitA);
  }

  /** Goes through the steps of the sheet. Before {@link #run()}, on a {@link StagedSheet}. */
  public void bringUp() {
    staged = true;
  }

  /** The mode now; any thread. */
  public BenchMode.State mode() {
    return modes.state();
  }

  /** The person has seen an alarm; an empty rule means all. */
  public void acknowledge(String rule, int rail) {
    wishes.later(() -> stream.accept(new ProbeEvent.Acknowledged(stream.now(), rule, rail)));
  }

  /**
   * Runs to the end.
   *
   * @return the chain that has seen everything
   * @throws RunRefused nothing was started
   * @throws IOException the line could not be opened in the first place
   */
  public Chain run() throws RunRefused, IOException {
    stream.talkOver(opener.open(), new FromProbe());
    bringUp = staged ? new BringUp(stream, wishes, supplyHand) : null;
    steps = new RunSteps(stream, wishes, limitMoves, supplyHand, bringUp);
    LineWatch line = new LineWatch(stream, wishes, steps, opener);
    try {
      while (!steps.done()) {
        line.poll(POLL_MILLIS);
        if (!stream.setup().live()) {
          stream.recorder().awaitRoom();
        }
        housekeeping();
        if (line.up()) {
          line.guard(this::step);
        }
        stream.progress().tick();
      }
    } finally {
      if (line.up()) {
        line.guard(this::leaveOff);
      }
      if (supplyHand != null) {
        supplyHand.end();
      }
      stream.talk().port().close();
    }
    if (stream.chain() == null) {
      throw new RunRefused(RunRefused.Kind.PROBE, Refusals.say("ended-before"));
    }
    return stream.chain();
  }

  private void housekeeping() {
    wishes.carryOut();
    if (stream.chain() != null) {
      stream.logState(stream.now());
    }
  }

  private void step() throws IOException, RunRefused {
    Conversation talk = stream.talk();
    talk.keepUp();
    if (wishes.wantedOff() != null) {
      steps.off(wishes.wantedOff(), wishes.wantsOver());
      wishes.offSent();
    }
    if (talk.port().inputEnded() && stream.setup().forMicros() == null) {
      steps.inputEnded();
    }
    modes.step();
    if (supplyHand != null) {
      supplyHand.step();
    }
    steps.step();
  }

  /** Whatever happened: the last word to the probe is off, and no stream. */
  private void leaveOff() throws IOException {
    Chain chain = stream.chain();
    if (chain != null && (chain.state() == SwitchState.ON || chain.state() == SwitchState.LOOK)) {
      stream.talk().send(new HostMessage.SwitchOff(SwitchCause.USER));
    }
  }

  /** The way from frames to the stream. */
  public FrameTranslator translator() {
    return stream.translator();
  }

  /** What has been seen; null until the probe has answered. */
  public Chain chain() {
    return stream.chain();
  }

  /** Who answered; null until then. */
  public ProbeHello hello() {
    return stream.hello();
  }

  /** Conversions between stream start and stop so far. */
  public Summary.ConversionCount conversions() {
    return stream.conversions();
  }

  /**
   * The box's own pedal: today's firmware tells every press and opens by itself when it is held.
   */
  private void pedal(PressKind kind) {
    switch (BoxPedal.of(stream.setup().pedal(), kind, steps.mayClose())) {
      case OFF -> off(OffCause.USER);
      case MARK -> mark("");
      default -> {
        // The probe does what is to be done.
      }
    }
  }

  /** What the probe says about itself. */
  private final class FromProbe implements Conversation.Listener {
    @Override
    public void hello(ProbeMessage.Hello message) {
      ProbeHello known = stream.hello();
      if (known != null && message.bootId() != known.bootId()) {
        steps.probeRestarted(message);
      } else {
        steps.hello(message);
      }
    }

    @Override
    public void restartUnsaid() {
      if (!steps.reconnecting()) {
        steps.whoIsThere();
      }
    }

    @Override
    public void calibration(ProbeMessage.Calibration calibration) {
      steps.calibration(calibration);
    }

    @Override
    public void press(ProbeMessage.Press press) {
      if (press.source() == PressSource.PEDAL && stream.chain() != null) {
        pedal(press.kind());
      }
    }

    @Override
    public void status(ProbeMessage.Status status) {
      stream.clips(status.clips());
      stream.progress().status(status.busyPercent(), status.dropped());
    }
  }

  /** Alarms go to the log before anyone else hears of them; the rest is passed on. */
  private final class Outwards extends ForwardingChainListener {
    Outwards(ChainListener listener) {
      super(listener);
    }

    @Override
    public void alarm(Alarm alarm) {
      stream.recorder().alarm(alarm);
      modes.alarm(alarm);
      super.alarm(alarm);
    }

    @Override
    public void reading(Reading reading, double atMs) {
      modes.reading(reading);
      if (bringUp != null) {
        bringUp.reading(reading, atMs);
      }
      super.reading(reading, atMs);
    }

    @Override
    public void demandsOff(String rule) {
      wishes.demandOff(OffCause.RULE);
      super.demandsOff(rule);
    }
  }
}
