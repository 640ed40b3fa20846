package firstamp.bench;

import firstamp.model.Happening;
import firstamp.model.OffCause;
import firstamp.model.OffReason;
import firstamp.model.ProbeEvent;
import firstamp.model.TimeSource;
import firstamp.model.text.Worded;
import firstamp.pipeline.ChainListener;
import firstamp.run.BenchMode;
import firstamp.run.LimitMove;
import firstamp.run.LivePowerUp;
import firstamp.run.RunSetup;
import firstamp.run.TripsInARow;
import firstamp.run.questions.ArmGate;
import firstamp.study.SearchState;
import firstamp.study.SignalSearch;
import java.util.Objects;

/**
 * A live power-up behind the window.
 *
 * <p>Its own thread, {@code session}, runs the power-up and publishes a snapshot about every 40 ms.
 * All methods may be called from any thread.
 */
public final class LiveBench implements BenchSession {
  private static final long JOIN_MILLIS = 8_000;

  private final LiveSetting setting;
  private final SignalSearch search;
  private final PowerUpMaker maker;
  private final Thread thread = new Thread(this::work, "session");
  private final AfterTheEnd afterTheEnd = new AfterTheEnd();
  private volatile BenchRun run;
  private volatile Snapshot snapshot;

  /** The same without another power-up behind it. */
  public LiveBench(
      RunSetup setup,
      TimeSource time,
      Snapshot.Kind kind,
      String port,
      String logFile,
      ArmGate gate,
      ChainListener alsoTold,
      PowerUpMaker maker) {
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
      PowerUpMaker maker,
      EarlierSource earlierSource) {
    Objects.requireNonNull(alsoTold, "alsoTold");
    this.search = SignalSearch.of(setup.effective());
    this.maker = maker;
    this.setting =
        new LiveSetting(
            setup,
            time,
            kind,
            port,
            logFile,
            gate,
            search == null ? alsoTold : search.before(alsoTold),
            new SleepWatch(time),
            new IdleWatch(time),
            new MovedLimits(),
            new EarlierFinder(earlierSource));
    this.run = make(0);
    run.publish();
  }

  private BenchRun make(int restoreTrip) {
    return new BenchRun(setting, maker, restoreTrip, run, next -> snapshot = next);
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
    setting.earlier().start();
  }

  private void work() {
    do {
      int restore = afterTheEnd.takeRestore();
      if (restore != 0) {
        begin(restore);
      }
      run.run();
    } while (afterTheEnd.await(event -> run.later(event)));
  }

  /**
   * A power-up of its own, with a course of its own: what the first one showed stays in the log.
   */
  private void begin(int restoreTrip) {
    run = make(restoreTrip);
    setting.gate().renew();
    // Nobody looked while it waited for this: that was no sleep.
    setting.sleepWatch().restart();
    setting.moved().begin(run.watch());
    run.publish();
  }

  /** What the power-up ended with; null while it runs and where it was refused. */
  public LivePowerUp.Result result() {
    return run.result();
  }

  /** Why it was refused or failed; null otherwise. */
  public Exception failure() {
    return run.failure();
  }

  @Override
  public Snapshot snapshot() {
    return snapshot;
  }

  @Override
  public void off() {
    run.watch().off(OffCause.USER);
  }

  @Override
  public void leave() {
    run.watch().over(OffCause.USER);
  }

  /** Ends because the process was told to. */
  public void endBySignal() {
    run.watch().off(OffCause.SIGNAL);
  }

  @Override
  public void mark(String text) {
    if (run.ended()) {
      afterTheEnd.add(new ProbeEvent.Marked(run.endMicros(), text));
    } else {
      run.watch().mark(text);
    }
  }

  @Override
  public void happened(Happening what) {
    if (!run.ended()) {
      run.watch().happened(what);
    }
  }

  @Override
  public void note(int mark, String text) {
    if (run.ended()) {
      afterTheEnd.add(new ProbeEvent.Noted(run.endMicros(), mark, text));
    } else {
      run.watch().note(mark, text);
    }
  }

  @Override
  public void explainOff(OffReason reason) {
    if (run.ended()) {
      afterTheEnd.add(new ProbeEvent.OffExplained(run.endMicros(), reason));
    } else {
      run.watch().explainOff(reason);
    }
  }

  @Override
  public void touched() {
    setting.idleWatch().touched();
  }

  @Override
  public void restore(ProbeEvent.SwitchedOnAgain what) {
    setting.gate().again(what);
    if (what.halfV() != null) {
      limit(TripsInARow.ceiling(what.halfV()));
    }
    restore(what.afterTrip());
  }

  @Override
  public void acknowledge() {
    if (run.ended()) {
      afterTheEnd.add(new ProbeEvent.Acknowledged(run.endMicros(), "", 0));
    } else {
      run.watch().acknowledge("", 0);
    }
  }

  @Override
  public void limit(LimitMove move) {
    Snapshot.Phase phase = snapshot.phase();
    if (phase == Snapshot.Phase.ENDED
        || phase == Snapshot.Phase.TRIPPED
        || phase == Snapshot.Phase.RAILS_FALLING) {
      setting.moved().keep(move);
      if (run.ended()) {
        snapshot = snapshot.with(run.beside());
      }
    } else {
      setting.moved().ask(move, run.watch());
    }
  }

  @Override
  public void mode(BenchMode mode, Worded awakeProblem) {
    run.watch().mode(mode, awakeProblem, 0);
  }

  /**
   * The same for a time.
   *
   * @param soakMicros how long to soak, 0 = the usual
   */
  public void mode(BenchMode mode, Worded awakeProblem, long soakMicros) {
    run.watch().mode(mode, awakeProblem, soakMicros);
  }

  @Override
  public BenchMode.State mode() {
    return run.watch().mode();
  }

  @Override
  public void restore(int tripNumber) {
    // Taken before the session thread is woken: the new one must not be told to end.
    BenchRun first = run;
    afterTheEnd.restore(tripNumber);
    // The rails of the first power-up are not followed any longer: it ends here.
    first.watch().off(OffCause.SIGNAL);
  }

  @Override
  public void answer(String questionId, boolean yes) {
    if (yes) {
      setting.gate().yes(questionId);
    } else {
      run.watch().over(OffCause.USER);
    }
  }

  @Override
  public void close() {
    setting.earlier().closing();
    afterTheEnd.close();
    run.watch().off(OffCause.SIGNAL);
    try {
      thread.join(JOIN_MILLIS);
      setting.earlier().join(JOIN_MILLIS);
    } catch (InterruptedException stop) {
      Thread.currentThread().interrupt();
    }
    setting.earlier().release();
  }

  @Override
  public SearchState search() {
    return search == null ? null : search.state();
  }
}
