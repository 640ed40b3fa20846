package firstamp.run;

import firstamp.model.ProbeEvent;
import firstamp.model.ProbeHello;
import firstamp.model.ProbePort;
import firstamp.model.Summary;
import firstamp.model.samples.ConversionBlock;
import firstamp.model.samples.Reading;
import firstamp.model.text.Worded;
import firstamp.pipeline.Chain;
import firstamp.pipeline.ChainListener;
import firstamp.pipeline.ObservedSwitch;
import firstamp.pipeline.PlannedSettings;
import firstamp.pipeline.RunRefused;
import firstamp.pipeline.StreamSink;
import firstamp.protocol.message.ProbeMessage;
import firstamp.protocol.values.Clips;
import firstamp.run.talk.ClockFit;
import firstamp.run.talk.Conversation;
import firstamp.run.talk.FrameTranslator;
import firstamp.run.talk.Hellos;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/**
 * The stream of one live power-up as it grows: what comes from the probe, and what the host and the
 * person add, goes into the log first and then through the pipeline.
 *
 * <p>The parts of a run know this and not the run. Not thread-safe: belongs to the session thread.
 */
final class RunStream implements StreamSink {
  private final RunSetup setup;
  private final Recorder recorder;
  private final ChainListener listener;
  private final RunProgress progress;
  private final List<ProbeEvent> early = new ArrayList<>();
  private final ClockFit clock = new ClockFit();
  private final FrameTranslator translator = new FrameTranslator(this);
  private final ObservedSwitch observedSwitch = new ObservedSwitch();
  private Conversation talk;
  private Chain chain;
  private ProbeHello hello;
  private Clips clips = Clips.UNKNOWN;

  /**
   * Before the probe has answered.
   *
   * @param listener told what the pipeline finds, and who answered
   */
  RunStream(RunSetup setup, Recorder recorder, ChainListener listener, RunProgress progress) {
    this.setup = setup;
    this.recorder = recorder;
    this.listener = listener;
    this.progress = progress;
  }

  /** The line is open. */
  void talkOver(ProbePort port, Conversation.Listener hears) {
    talk = new Conversation(port, translator, clock, hears);
  }

  /** The probe answered for the first time: from here on everything is logged. */
  void begin(Greeting.Found found) throws RunRefused {
    hello = Hellos.of(found.hello(), talk.port().describe(), found.calibration());
    PlannedSettings planned = setup.settings().plan(hello, Set.of());
    chain = new Chain(setup.effective(), hello, setup.raw(), setup.label(), listener);
    listener.probe(hello);
    recorder.begin(hello, planned);
    progress.started(hello);
    translator.ignoreTrip(found.hello().latchedTrip());
    // What a person said before the probe had a time of its own belongs to its first moment.
    early.forEach(this::accept);
    early.clear();
  }

  /** The same probe after a restart: the power-up continues under the scales of its first hello. */
  void restartedAs(ProbeMessage.Hello message) {
    hello = Hellos.of(message, talk.port().describe(), null);
  }

  @Override
  public void accept(ConversionBlock block) {
    if (chain != null) {
      recorder.accept(block);
      chain.accept(block);
      observe();
    }
  }

  @Override
  public void accept(Reading reading) {
    if (chain != null) {
      recorder.accept(reading);
      chain.accept(reading);
      observe();
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
  private void observe() {
    if (!setup.observe() || chain.latest() == null) {
      return;
    }
    ProbeEvent.SwitchChanged closed = observedSwitch.see(chain, setup.effective());
    if (closed != null) {
      accept(closed);
    }
  }

  /** What became known about the log since the last turn. */
  void logState(long micros) {
    for (Worded text = recorder.stateChange(); text != null; text = recorder.stateChange()) {
      accept(ProbeEvent.LogChanged.now(micros, recorder.logging(), text));
    }
  }

  /** Before the end: a log that could not be written may be by now, and then all of it is kept. */
  void settleLog() {
    recorder.settle();
    logState(translator.lastMicros());
  }

  /** Probe time now, as the host knows it. */
  long now() {
    long estimate = clock.probeMicrosAt(talk.port().time().monotonicNanos());
    return Math.max(translator.lastMicros(), estimate);
  }

  RunSetup setup() {
    return setup;
  }

  Recorder recorder() {
    return recorder;
  }

  RunProgress progress() {
    return progress;
  }

  Conversation talk() {
    return talk;
  }

  FrameTranslator translator() {
    return translator;
  }

  ClockFit clock() {
    return clock;
  }

  /** What has been seen; null until the probe has answered. */
  Chain chain() {
    return chain;
  }

  /** Who answered; null until then. */
  ProbeHello hello() {
    return hello;
  }

  /** Which clips are joined, as the probe has read them back last. */
  Clips clips() {
    return clips;
  }

  void clips(Clips read) {
    clips = read;
  }

  /** Conversions between stream start and stop so far. */
  Summary.ConversionCount conversions() {
    return new Summary.ConversionCount(translator.received(), translator.lost(), translator.gaps());
  }
}
