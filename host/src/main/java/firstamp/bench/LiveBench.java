package firstamp.bench;

import firstamp.log.LogException;
import firstamp.model.Alarm;
import firstamp.model.Happening;
import firstamp.model.OffCause;
import firstamp.model.OffReason;
import firstamp.model.ProbeEvent;
import firstamp.model.ProbeHello;
import firstamp.model.RuleId;
import firstamp.model.Summary;
import firstamp.model.SwitchState;
import firstamp.model.TimeSource;
import firstamp.model.samples.LevelWindow;
import firstamp.model.samples.Reading;
import firstamp.model.text.Explained;
import firstamp.model.text.Worded;
import firstamp.pipeline.Chain;
import firstamp.pipeline.ChainListener;
import firstamp.pipeline.ForwardingChainListener;
import firstamp.pipeline.RunRefused;
import firstamp.run.BenchMode;
import firstamp.run.IdleWatch;
import firstamp.run.LimitMove;
import firstamp.run.LivePowerUp;
import firstamp.run.RunProgress;
import firstamp.run.RunSetup;
import firstamp.run.RunStep;
import firstamp.run.SleepWatch;
import firstamp.run.TripsInARow;
import firstamp.run.WatchRun;
import firstamp.run.questions.ArmGate;
import firstamp.study.EarlierPowerUp;
import firstamp.study.SearchState;
import firstamp.study.SignalSearch;
import firstamp.trend.LoggedCourse;
import java.io.IOException;
import java.util.List;
import java.util.Objects;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.CopyOnWriteArrayList;

/**
 * A live power-up behind the window.
 *
 * <p>Its own thread, {@code session}, runs the power-up and publishes a snapshot about every 40 ms.
 * All methods may be called from any thread.
 */
public final class LiveBench implements BenchSession {
  private static final long SNAPSHOT_NANOS = 30_000_000L;
  private static final long JOIN_MILLIS = 8_000;

  private final RunSetup setup;
  private final TimeSource time;
  private final Snapshot.Kind kind;
  private final String port;
  private final String logFile;
  private final ArmGate gate;
  private final ChainListener alsoTold;
  private final SignalSearch search;
  private final Maker maker;
  private final EarlierSource earlierSource;
  private final SleepWatch sleepWatch;
  private final IdleWatch idleWatch;
  private final Queue<ProbeEvent> later = new ConcurrentLinkedQueue<>();
  private final List<LimitMove> nextTime = new CopyOnWriteArrayList<>();
  private final Thread thread;
  private final Thread finder;
  private SnapshotBuilder builder;
  private volatile LivePowerUp powerUp;
  private volatile Snapshot snapshot;
  private volatile LivePowerUp.Result result;
  private volatile Exception failure;
  private volatile int restoreWanted;
  private final Object lock = new Object();
  private volatile boolean ended;
  private volatile boolean closing;
  private volatile EarlierPowerUp earlier;
  private volatile Snapshot.Moved moved;
  private volatile Integer untouchedOffInS;
  private volatile Long sleptAtEpochMs;
  private volatile Snapshot.LookScale lookScale;
  private RunStep step = RunStep.CONNECTING;
  private Integer countdownS;
  private Worded notice;
  private long publishedNanos;

  /** Makes the power-up once its listeners are known. */
  @FunctionalInterface
  public interface Maker {
    /**
     * A power-up that tells these two.
     *
     * @param restoreTrip number of the trip after which it switches on again, 0 = none
     */
    LivePowerUp make(ChainListener listener, RunProgress progress, int restoreTrip);
  }

  /** Finds the power-up to be drawn behind; may take its time. */
  @FunctionalInterface
  public interface EarlierSource {
    /**
     * Finds it.
     *
     * @return null = there is none
     * @throws LogException the log cannot be read
     */
    EarlierPowerUp find() throws LogException;
  }

  /** The same without another power-up behind it. */
  public LiveBench(
      RunSetup setup,
      TimeSource time,
      Snapshot.Kind kind,
      String port,
      String logFile,
      ArmGate gate,
      ChainListener alsoTold,
      Maker maker) {
    this(setup, time, kind, port, logFile, gate, alsoTold, maker, () -> null);
  }

  /**
   * A bench whose power-up starts with {@link #start()}.
   *
   * @param setup of the run
   * @param time the computer's clock
   * @param kind what stands behind it
   * @param port as the person named it, null = none
   * @param logFile where it is kept
   * @param gate questions that hold up arming
   * @param alsoTold hears what the chain finds besides the window
   * @param maker of the power-up
   * @param earlierSource of the power-up to be drawn behind
   */
  public LiveBench(
      RunSetup setup,
      TimeSource time,
      Snapshot.Kind kind,
      String port,
      String logFile,
      ArmGate gate,
      ChainListener alsoTold,
      Maker maker,
      EarlierSource earlierSource) {
    this.setup = setup;
    this.time = time;
    this.kind = kind;
    this.port = port;
    this.logFile = logFile;
    this.gate = gate;
    this.search = SignalSearch.of(setup.effective());
    Objects.requireNonNull(alsoTold, "alsoTold");
    this.alsoTold = search == null ? alsoTold : search.before(alsoTold);
    this.builder = new SnapshotBuilder(setup.effective());
    this.maker = maker;
    this.earlierSource = Objects.requireNonNull(earlierSource, "earlierSource");
    this.sleepWatch = new SleepWatch(time);
    this.idleWatch = new IdleWatch(time);
    this.powerUp = maker.make(new Both(), new Progress(), 0);
    this.snapshot = build();
    this.thread = new Thread(this::work, "session");
    this.finder = new Thread(this::findEarlier, "earlier");
  }

  /** Carries on the search of an earlier power-up of the same set; before {@link #start()}. */
  public void carryOn(SearchState before) {
    if (search != null) {
      search.carryOn(before);
    }
  }

  /** Starts the session thread. */
  public void start() {
    thread.start();
    finder.setDaemon(true);
    finder.start();
  }

  /** What cannot be read is not drawn: that must never hold up a power-up. */
  private void findEarlier() {
    try {
      EarlierPowerUp found = earlierSource.find();
      earlier = found;
      if (closing) {
        closeEarlier();
      }
    } catch (LogException unreadable) {
      earlier = null;
    }
  }

  private void closeEarlier() {
    if (earlier != null && earlier.course() instanceof LoggedCourse course) {
      course.close();
    }
  }

  private void work() {
    do {
      int restore = restoreWanted;
      if (restore != 0) {
        begin(restore);
      }
      try {
        result = powerUp.run();
      } catch (RunRefused | IOException refused) {
        failure = refused;
        notice = Explained.of(refused);
      } finally {
        ended = true;
        snapshot = build();
      }
    } while (waitForRestore());
  }

  /**
   * A power-up of its own, with a course of its own: what the first one showed stays in the log.
   */
  private void begin(int restoreTrip) {
    restoreWanted = 0;
    ended = false;
    result = null;
    failure = null;
    notice = null;
    step = RunStep.CONNECTING;
    builder = new SnapshotBuilder(setup.effective());
    powerUp = maker.make(new Both(), new Progress(), restoreTrip);
    moved = null;
    untouchedOffInS = null;
    gate.renew();
    sleptAtEpochMs = null;
    // Nobody looked while it waited for this: that was no sleep.
    sleepWatch.restart();
    for (LimitMove move : nextTime) {
      powerUp.watch().limit(move);
    }
    nextTime.clear();
    snapshot = build();
  }

  /** After the end: adds what is still wished, until it is to go on or to close. */
  private boolean waitForRestore() {
    while (true) {
      synchronized (lock) {
        while (restoreWanted == 0 && !closing && later.isEmpty()) {
          try {
            lock.wait();
          } catch (InterruptedException stop) {
            Thread.currentThread().interrupt();
            return false;
          }
        }
      }
      addLater();
      if (closing || restoreWanted != 0) {
        return !closing;
      }
    }
  }

  private void addLater() {
    for (ProbeEvent event = later.poll(); event != null; event = later.poll()) {
      try {
        powerUp.later(event);
        if (powerUp.watch().chain() != null) {
          powerUp.watch().chain().accept(event);
        }
      } catch (LogException failed) {
        notice = Explained.of(failed);
      }
      snapshot = build();
    }
  }

  private void afterTheEnd(ProbeEvent event) {
    synchronized (lock) {
      later.add(event);
      lock.notifyAll();
    }
  }

  private long endMicros() {
    return powerUp.watch().translator().lastMicros();
  }

  /** What the power-up ended with; null while it runs and where it was refused. */
  public LivePowerUp.Result result() {
    return result;
  }

  /** Why it was refused or failed; null otherwise. */
  public Exception failure() {
    return failure;
  }

  @Override
  public Snapshot snapshot() {
    return snapshot;
  }

  @Override
  public void off() {
    powerUp.watch().off(OffCause.USER);
  }

  @Override
  public void leave() {
    powerUp.watch().over(OffCause.USER);
  }

  /** Ends because the process was told to. */
  public void endBySignal() {
    powerUp.watch().off(OffCause.SIGNAL);
  }

  @Override
  public void mark(String text) {
    if (ended) {
      afterTheEnd(new ProbeEvent.Marked(endMicros(), text));
    } else {
      powerUp.watch().mark(text);
    }
  }

  @Override
  public void happened(Happening what) {
    if (!ended) {
      powerUp.watch().happened(what);
    }
  }

  @Override
  public void note(int mark, String text) {
    if (ended) {
      afterTheEnd(new ProbeEvent.Noted(endMicros(), mark, text));
    } else {
      powerUp.watch().note(mark, text);
    }
  }

  @Override
  public void explainOff(OffReason reason) {
    if (ended) {
      afterTheEnd(new ProbeEvent.OffExplained(endMicros(), reason));
    } else {
      powerUp.watch().explainOff(reason);
    }
  }

  @Override
  public void touched() {
    idleWatch.touched();
  }

  @Override
  public void restore(ProbeEvent.SwitchedOnAgain what) {
    gate.again(what);
    if (what.halfV() != null) {
      limit(TripsInARow.ceiling(what.halfV()));
    }
    restore(what.afterTrip());
  }

  @Override
  public void acknowledge() {
    if (ended) {
      afterTheEnd(new ProbeEvent.Acknowledged(endMicros(), "", 0));
    } else {
      powerUp.watch().acknowledge("", 0);
    }
  }

  @Override
  public void limit(LimitMove move) {
    Snapshot.Phase phase = snapshot.phase();
    if (phase == Snapshot.Phase.ENDED
        || phase == Snapshot.Phase.TRIPPED
        || phase == Snapshot.Phase.RAILS_FALLING) {
      nextTime.removeIf(other -> other.kind() == move.kind() && other.rail() == move.rail());
      nextTime.add(move);
      moved = new Snapshot.Moved(move, Snapshot.MoveState.NEXT_TIME, null);
      if (ended) {
        snapshot = snapshot.with(beside());
      }
    } else {
      moved = new Snapshot.Moved(move, Snapshot.MoveState.ASKED, null);
      powerUp.watch().limit(move);
    }
  }

  @Override
  public void mode(BenchMode mode, Worded awakeProblem) {
    powerUp.watch().mode(mode, awakeProblem, 0);
  }

  /**
   * The same for a time.
   *
   * @param soakMicros how long to soak, 0 = the usual
   */
  public void mode(BenchMode mode, Worded awakeProblem, long soakMicros) {
    powerUp.watch().mode(mode, awakeProblem, soakMicros);
  }

  @Override
  public BenchMode.State mode() {
    return powerUp.watch().mode();
  }

  @Override
  public void restore(int tripNumber) {
    // Taken before the session thread is woken: the new one must not be told to end.
    LivePowerUp first = powerUp;
    synchronized (lock) {
      restoreWanted = tripNumber;
      lock.notifyAll();
    }
    // The rails of the first power-up are not followed any longer: it ends here.
    first.watch().off(OffCause.SIGNAL);
  }

  @Override
  public void answer(String questionId, boolean yes) {
    if (yes) {
      gate.yes(questionId);
    } else {
      powerUp.watch().over(OffCause.USER);
    }
  }

  @Override
  public void seek(double ms) {
    // Only a replay can be moved.
  }

  @Override
  public void speed(double factor) {
    // Only a replay has a speed.
  }

  @Override
  public void pause(boolean held) {
    // Only a replay can be held.
  }

  @Override
  public void step() {
    // Only a replay can be stepped.
  }

  @Override
  public void close() {
    synchronized (lock) {
      closing = true;
      lock.notifyAll();
    }
    powerUp.watch().off(OffCause.SIGNAL);
    try {
      thread.join(JOIN_MILLIS);
      finder.join(JOIN_MILLIS);
    } catch (InterruptedException stop) {
      Thread.currentThread().interrupt();
    }
    closeEarlier();
  }

  private Snapshot.Beside beside() {
    return new Snapshot.Beside(
        earlier,
        sleptAtEpochMs,
        moved,
        null,
        !ended && gate.takenBack(),
        failure instanceof RunRefused refused ? refused.latched() : null,
        lookScale,
        builder.said(),
        builder.told(),
        untouchedOffInS,
        ended && neverAnswered());
  }

  /** The line could not be opened, or nobody on it said that it is a probe box. */
  private boolean neverAnswered() {
    return failure != null && powerUp.watch().hello() == null && beforeProbe(failure);
  }

  private static boolean beforeProbe(Exception failure) {
    return failure instanceof RunRefused refused
        ? refused.kind() == RunRefused.Kind.PROBE
        : failure instanceof IOException;
  }

  private Snapshot build() {
    WatchRun watch = powerUp == null ? null : powerUp.watch();
    Chain chain = watch == null ? null : watch.chain();
    return builder.build(
        chain,
        new SnapshotBuilder.Outside(
            phase(chain),
            kind,
            powerUp == null ? null : powerUp.number(),
            setup.label(),
            notice,
            countdownS,
            null,
            port,
            logFile,
            watch == null ? 0 : watch.conversions().lost(),
            !setup.raw(),
            chain == null ? null : chain.capture(),
            SnapshotParts.limits(builder.sheet()),
            // What is over asks nothing any more.
            ended || gate.open() ? List.of() : gate.questions(),
            result == null ? null : result.summary(),
            beside()));
  }

  private Snapshot.Phase phase(Chain chain) {
    if (ended) {
      return Snapshot.Phase.ENDED;
    }
    if (chain == null) {
      return Snapshot.Phase.CONNECTING;
    }
    if (chain.state() == SwitchState.TRIPPED) {
      return Snapshot.Phase.TRIPPED;
    }
    return switch (step) {
      case CONNECTING -> Snapshot.Phase.CONNECTING;
      case STARTING, LIMITS, QUIET, ARMING -> Snapshot.Phase.OPEN;
      case CLOSING ->
          chain.state() == SwitchState.LOOK ? Snapshot.Phase.LOOK : Snapshot.Phase.CHECK;
      case ON -> Snapshot.Phase.ON;
      case FALLING, STOPPING, DONE -> Snapshot.Phase.RAILS_FALLING;
    };
  }

  @Override
  public SearchState search() {
    return search == null ? null : search.state();
  }

  /** To the snapshot and to whoever else listens. */
  private final class Both extends ForwardingChainListener {
    Both() {
      super(alsoTold);
    }

    @Override
    public void probe(ProbeHello hello) {
      lookScale = Snapshot.LookScale.of(hello);
      super.probe(hello);
    }

    @Override
    public void look(Summary.LookFigures figures) {
      Snapshot.LookScale scale = lookScale;
      lookScale = scale == null ? null : scale.after(setup.effective(), figures);
      builder.look(figures);
      super.look(figures);
    }

    @Override
    public void alarm(Alarm alarm) {
      if (alarm.rule().equals(RuleId.CLIP_OFF.id())) {
        // A clip that goes or comes was moved by somebody.
        idleWatch.touched();
        gate.hookUpChanged();
      }
      builder.alarm(alarm);
      super.alarm(alarm);
    }

    @Override
    public void off(OffCause by, double atMs) {
      builder.off(by, atMs);
      super.off(by, atMs);
    }

    @Override
    public void mark(String text, double atMs) {
      builder.mark(text, atMs);
      super.mark(text, atMs);
    }

    @Override
    public void happened(Happening what, double atMs) {
      builder.happened(what, atMs);
      super.happened(what, atMs);
    }

    @Override
    public void told(ProbeEvent.Told event, double atMs) {
      builder.told(event, atMs);
      super.told(event, atMs);
    }

    @Override
    public void press(ProbeEvent.Press press, double atMs) {
      idleWatch.touched();
      super.press(press, atMs);
    }

    @Override
    public void noted(int mark, String text) {
      builder.noted(mark, text);
      super.noted(mark, text);
    }

    @Override
    public void limitChanged(ProbeEvent.LimitChanged event) {
      builder.limitChanged(event);
      super.limitChanged(event);
    }

    @Override
    public void seenAfterTheEnd() {
      builder.seenAfterTheEnd();
      super.seenAfterTheEnd();
    }

    @Override
    public void link(ProbeEvent.LinkState state, String text, double atMs) {
      gate.hookUpChanged();
      builder.link(state, text, atMs);
      super.link(state, text, atMs);
    }

    @Override
    public void log(ProbeEvent.LogChanged event, double atMs) {
      builder.log(event, atMs);
      super.log(event, atMs);
    }

    @Override
    public void reading(Reading reading, double atMs) {
      builder.add(reading, powerUp.watch().chain().scaling());
      super.reading(reading, atMs);
    }

    @Override
    public void levels(LevelWindow window) {
      builder.levels(window);
      super.levels(window);
    }
  }

  /** Publishes snapshots. */
  private final class Progress implements RunProgress {
    @Override
    public void started(ProbeHello hello) {
      notice = null;
    }

    @Override
    public void tick() {
      Long slept = sleepWatch.look();
      if (slept != null) {
        sleptAtEpochMs = slept;
      }
      watchIdle(powerUp.watch());
      long now = time.monotonicNanos();
      if (now - publishedNanos >= SNAPSHOT_NANOS) {
        publishedNanos = now;
        snapshot = build();
      }
    }

    /** Left on by accident: neither a soak nor a time that was asked for. */
    private void watchIdle(WatchRun run) {
      boolean counts =
          step == RunStep.ON
              && !setup.observe()
              && setup.forMicros() == null
              && run.mode().mode() != BenchMode.SOAK;
      if (!counts) {
        idleWatch.touched();
        untouchedOffInS = untouchedOffInS != null && untouchedOffInS == 0 ? untouchedOffInS : null;
      } else if (untouchedOffInS == null || untouchedOffInS != 0) {
        untouchedOffInS = idleWatch.offInS();
        if (idleWatch.over()) {
          run.off(OffCause.TIME);
        }
      }
    }

    @Override
    public void waiting(Worded words) {
      notice = words;
      snapshot = build();
    }

    @Override
    public void limitAnswer(LimitMove move, boolean taken, Worded why) {
      moved =
          new Snapshot.Moved(
              move, taken ? Snapshot.MoveState.TAKEN : Snapshot.MoveState.REFUSED, why);
    }

    @Override
    public void countdown(int seconds) {
      countdownS = seconds > 0 ? seconds : null;
    }

    @Override
    public void step(RunStep next) {
      step = next;
      snapshot = build();
    }
  }
}
