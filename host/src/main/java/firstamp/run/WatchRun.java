package firstamp.run;

import firstamp.model.Alarm;
import firstamp.model.ConversionBlock;
import firstamp.model.Happening;
import firstamp.model.OffCause;
import firstamp.model.OffReason;
import firstamp.model.ProbeEvent;
import firstamp.model.ProbeHello;
import firstamp.model.ProbePort;
import firstamp.model.Reading;
import firstamp.model.Summary;
import firstamp.model.SwitchState;
import firstamp.pipeline.Chain;
import firstamp.pipeline.ChainListener;
import firstamp.pipeline.ForwardingChainListener;
import firstamp.pipeline.ObservedSwitch;
import firstamp.pipeline.PlannedSettings;
import firstamp.pipeline.RunRefused;
import firstamp.pipeline.StreamSink;
import firstamp.protocol.Clips;
import firstamp.protocol.HostMessage;
import firstamp.protocol.PressKind;
import firstamp.protocol.PressSource;
import firstamp.protocol.ProbeMessage;
import firstamp.protocol.SwitchCause;
import firstamp.run.talk.ClockFit;
import firstamp.run.talk.Conversation;
import firstamp.run.talk.FrameTranslator;
import firstamp.run.talk.Hellos;
import firstamp.run.talk.PortOpener;
import firstamp.supply.BenchSupply;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Queue;
import java.util.Set;
import java.util.concurrent.ConcurrentLinkedQueue;

/**
 * One live power-up, from the first hello to the last conversion: connects, arms, watches, switches
 * off, follows the rails down.
 *
 * <p>{@link #run()} is the session thread. {@link #off}, {@link #mark} and {@link #acknowledge} may
 * be called from any thread.
 */
public final class WatchRun implements StreamSink {
  private static final int POLL_MILLIS = 20;

  private final RunSetup setup;
  private final PortOpener opener;
  private final Recorder recorder;
  private final ChainListener listener;
  private final RunProgress progress;
  private final Queue<Runnable> commands = new ConcurrentLinkedQueue<>();
  private final List<ProbeEvent> early = new ArrayList<>();
  private final ClockFit clock = new ClockFit();
  private final FrameTranslator translator = new FrameTranslator(this);
  private final ObservedSwitch observedSwitch = new ObservedSwitch();
  private Conversation talk;
  private Chain chain;
  private ProbeHello hello;
  private Clips clips = Clips.UNKNOWN;
  private RunSteps steps;
  private OffCause wantOff;
  private boolean wantEnd;
  private boolean wantOver;
  private final LimitMoves limitMoves;
  private final Modes modes;
  private SupplyHand supplyHand;
  private BringUp bringUp;

  /**
   * A run that has not started.
   *
   * @param setup what to do
   * @param opener of the line
   * @param recorder keeps the stream
   * @param listener told what the chain finds
   * @param progress told how the run gets on
   */
  public WatchRun(
      RunSetup setup,
      PortOpener opener,
      Recorder recorder,
      ChainListener listener,
      RunProgress progress) {
    this.setup = setup;
    this.opener = opener;
    this.recorder = recorder;
    this.listener = listener;
    this.progress = progress;
    this.limitMoves = new LimitMoves(this);
    this.modes = new Modes(this);
  }

  /**
   * Opens the switch and ends the run after the rails are down; a countdown is stopped, and where
   * somebody answers the go is asked for again. Safe from any thread, and more than once.
   */
  public void off(OffCause by) {
    commands.add(
        () -> {
          wantOff = wantOff == null ? by : wantOff;
          wantEnd |= by == OffCause.SIGNAL;
        });
  }

  /** The same for good: after a countdown that this stops nothing is asked again. */
  public void over(OffCause by) {
    commands.add(() -> wantOver = true);
    off(by);
  }

  /** Puts a mark at the present probe time. */
  public void mark(String text) {
    commands.add(() -> accept(new ProbeEvent.Marked(now(), text)));
  }

  /** Says what was done to the set: a clip moved, record on, something changed. */
  public void happened(Happening what) {
    commands.add(() -> accept(new ProbeEvent.Happened(now(), what)));
  }

  /** Puts words to an earlier mark; 1 = the first one. */
  public void note(int mark, String text) {
    commands.add(() -> accept(new ProbeEvent.Noted(now(), mark, text)));
  }

  /** Keeps why it was switched off. */
  public void explainOff(OffReason reason) {
    commands.add(() -> accept(new ProbeEvent.OffExplained(now(), reason)));
  }

  /** Asks the probe for another limit, as soon as it can be asked. */
  public void limit(LimitMove move) {
    commands.add(() -> limitMoves.want(move));
  }

  /**
   * Asks for another mode, as soon as it makes sense.
   *
   * @param awakeProblem why the computer may fall asleep, null = it is kept awake
   * @param soakMicros how long to soak, 0 = two hours
   */
  public void mode(BenchMode mode, String awakeProblem, long soakMicros) {
    commands.add(() -> modes.want(mode, awakeProblem, soakMicros));
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
    supplyHand = new SupplyHand(this, supply, volts, limitA);
  }

  /** Goes through the steps of the sheet. Before {@link #run()}, on a {@link StagedSheet}. */
  public void bringUp() {
    bringUp = new BringUp(this);
  }

  boolean supplyReady() throws RunRefused {
    return supplyHand == null || supplyHand.ready();
  }

  /** Whether a supply does it by itself. */
  boolean giveSupply(double volts, double limitA) {
    if (supplyHand == null) {
      return false;
    }
    supplyHand.give(volts, limitA);
    return true;
  }

  /** Whether all steps of a staged bring-up are over. */
  boolean bringUpDone() {
    return bringUp != null && bringUp.done();
  }

  /** The mode now; any thread. */
  public BenchMode.State mode() {
    return modes.state();
  }

  /** The person has seen an alarm; an empty rule means all. */
  public void acknowledge(String rule, int rail) {
    commands.add(() -> accept(new ProbeEvent.Acknowledged(now(), rule, rail)));
  }

  /**
   * Runs to the end.
   *
   * @return the chain that has seen everything
   * @throws RunRefused nothing was started
   * @throws IOException the line could not be opened in the first place
   */
  public Chain run() throws RunRefused, IOException {
    ProbePort port = opener.open();
    talk = new Conversation(port, translator, clock, new FromProbe());
    LineWatch line = new LineWatch(this, opener);
    steps = new RunSteps(this);
    try {
      while (!steps.done()) {
        line.poll(POLL_MILLIS);
        if (!setup.live()) {
          recorder.awaitRoom();
        }
        housekeeping();
        if (line.up()) {
          line.guard(this::step);
        }
        progress.tick(this);
      }
    } finally {
      if (line.up()) {
        line.guard(this::leaveOff);
      }
      if (supplyHand != null) {
        supplyHand.end();
      }
      talk.port().close();
    }
    if (chain == null) {
      throw new RunRefused(RunRefused.Kind.PROBE, "ended before the probe box answered.");
    }
    return chain;
  }

  private void housekeeping() {
    for (Runnable command = commands.poll(); command != null; command = commands.poll()) {
      command.run();
    }
    if (chain != null) {
      logState(now());
    }
  }

  private void logState(long micros) {
    for (String text = recorder.stateChange(); text != null; text = recorder.stateChange()) {
      accept(new ProbeEvent.LogChanged(micros, recorder.logging(), text));
    }
  }

  /** Before the end: a log that could not be written may be by now, and then all of it is kept. */
  void settleLog() {
    recorder.settle();
    logState(translator.lastMicros());
  }

  private void step() throws IOException, RunRefused {
    talk.keepUp();
    if (wantOff != null) {
      steps.off(wantOff, wantOver);
      wantOff = null;
    }
    if (talk.port().inputEnded() && setup.forMicros() == null) {
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
    if (chain != null && (chain.state() == SwitchState.ON || chain.state() == SwitchState.LOOK)) {
      talk.send(new HostMessage.SwitchOff(SwitchCause.USER));
    }
  }

  /** The probe answered for the first time: from here on everything is logged. */
  void begin(Greeting.Found found) throws RunRefused {
    hello = Hellos.of(found.hello(), talk.port().describe(), found.calibration());
    PlannedSettings planned = setup.settings().plan(hello, Set.of());
    chain = new Chain(setup.effective(), hello, setup.raw(), setup.label(), new Outwards());
    listener.probe(hello);
    recorder.begin(hello, planned);
    progress.started(hello);
    translator.ignoreTrip(found.hello().latchedTrip());
    // What a person said before the probe had a time of its own belongs to its first moment.
    early.forEach(this::accept);
    early.clear();
  }

  /** Which clips are joined, as the probe has read them back last. */
  Clips clips() {
    return clips;
  }

  /** The same probe after a restart: the power-up goes on under the scales of its first hello. */
  void restartedAs(ProbeMessage.Hello message) {
    hello = Hellos.of(message, talk.port().describe(), null);
  }

  @Override
  public void accept(ConversionBlock block) {
    if (chain != null) {
      recorder.accept(block);
      chain.accept(block);
      observed();
    }
  }

  @Override
  public void accept(Reading reading) {
    if (chain != null) {
      recorder.accept(reading);
      chain.accept(reading);
      observed();
    }
  }

  @Override
  public void accept(ProbeEvent event) {
    if (chain != null) {
      recorder.accept(event);
      chain.accept(event);
    } else if (event instanceof ProbeEvent.Marked
        || event instanceof ProbeEvent.Noted
        || event instanceof ProbeEvent.Happened) {
      early.add(event);
    }
  }

  /**
   * Without a switch of ours the set counts as on from the first reading over a tenth of nominal.
   */
  private void observed() {
    if (!setup.observe() || chain.latest() == null) {
      return;
    }
    ProbeEvent.SwitchChanged closed = observedSwitch.see(chain, setup.effective());
    if (closed != null) {
      accept(closed);
    }
  }

  /** Probe time now, as the host knows it. */
  long now() {
    long estimate = clock.probeMicrosAt(talk.port().time().monotonicNanos());
    return Math.max(translator.lastMicros(), estimate);
  }

  RunSetup setup() {
    return setup;
  }

  Conversation talk() {
    return talk;
  }

  public FrameTranslator translator() {
    return translator;
  }

  ClockFit clock() {
    return clock;
  }

  RunProgress progress() {
    return progress;
  }

  Modes modes() {
    return modes;
  }

  LimitMoves limitMoves() {
    return limitMoves;
  }

  RunSteps steps() {
    return steps;
  }

  boolean wantsEnd() {
    return wantEnd;
  }

  Recorder recorder() {
    return recorder;
  }

  /** What has been seen; null until the probe has answered. */
  public Chain chain() {
    return chain;
  }

  /** Who answered; null until then. */
  public ProbeHello hello() {
    return hello;
  }

  /** Conversions between stream start and stop so far. */
  public Summary.ConversionCount conversions() {
    return new Summary.ConversionCount(translator.received(), translator.lost(), translator.gaps());
  }

  /**
   * The box's own pedal: today's firmware tells every press and opens by itself when it is held.
   */
  private void pedal(PressKind kind) {
    switch (BoxPedal.of(setup.pedal(), kind, steps.mayClose())) {
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
      if (hello != null && message.bootId() != hello.bootId()) {
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
      if (press.source() == PressSource.PEDAL && chain != null) {
        pedal(press.kind());
      }
    }

    @Override
    public void status(ProbeMessage.Status status) {
      clips = status.clips();
      progress.status(status.busyPercent(), status.dropped());
    }
  }

  /** Alarms go to the log before anyone else hears of them; the rest is passed on. */
  private final class Outwards extends ForwardingChainListener {
    Outwards() {
      super(listener);
    }

    @Override
    public void alarm(Alarm alarm) {
      recorder.alarm(alarm);
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
      wantOff = wantOff == null ? OffCause.RULE : wantOff;
      super.demandsOff(rule);
    }
  }
}
