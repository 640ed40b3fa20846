package firstamp.bench;

import firstamp.log.LogException;
import firstamp.model.ProbeEvent;
import firstamp.model.ProbeHello;
import firstamp.model.SwitchState;
import firstamp.model.text.Explained;
import firstamp.model.text.Worded;
import firstamp.pipeline.Chain;
import firstamp.pipeline.RunRefused;
import firstamp.run.BenchMode;
import firstamp.run.LimitMove;
import firstamp.run.LivePowerUp;
import firstamp.run.LiveRun;
import firstamp.run.RunProgress;
import firstamp.run.RunStep;
import java.io.IOException;
import java.util.List;
import java.util.function.Consumer;

/**
 * One power-up of a live bench: runs it, knows where it stands, and publishes that as snapshots
 * about every 40 ms. Made and run on the session thread; what it ended with may be asked anywhere.
 */
final class BenchRun {
  private static final long SNAPSHOT_NANOS = 30_000_000L;

  private final LiveSetting setting;
  private final Consumer<Snapshot> published;
  private final SnapshotBuilder builder;
  private final BenchListener listener;
  private final UntouchedOff untouched;
  private final LivePowerUp powerUp;
  private volatile LivePowerUp.Result result;
  private volatile Exception failure;
  private volatile boolean ended;
  private volatile Long sleptAtEpochMs;
  private RunStep step = RunStep.CONNECTING;
  private Integer countdownS;
  private Worded notice;
  private long publishedNanos;

  /**
   * A power-up that has not begun.
   *
   * @param setting of the bench
   * @param maker of the power-up
   * @param restoreTrip number of the trip after which it switches on again, 0 = none
   * @param before the one before on this bench, null = none
   * @param published takes the snapshots
   */
  BenchRun(
      LiveSetting setting,
      PowerUpMaker maker,
      int restoreTrip,
      BenchRun before,
      Consumer<Snapshot> published) {
    this.setting = setting;
    this.published = published;
    builder = new SnapshotBuilder(setting.setup().effective());
    untouched = new UntouchedOff(setting.idleWatch());
    listener =
        new BenchListener(
            setting,
            builder,
            () -> watch().chain().scaling(),
            before == null ? null : before.listener.lookScale());
    countdownS = before == null ? null : before.countdownS;
    publishedNanos = before == null ? 0 : before.publishedNanos;
    powerUp = maker.make(listener, new Progress(), restoreTrip);
  }

  /** Runs it to its end; whatever comes of it is in the last snapshot. */
  void run() {
    try {
      result = powerUp.run();
    } catch (RunRefused | IOException refused) {
      failure = refused;
      notice = Explained.of(refused);
    } finally {
      ended = true;
      publish();
    }
  }

  /** Adds something after the end. */
  void later(ProbeEvent event) {
    try {
      powerUp.later(event);
      if (watch().chain() != null) {
        watch().chain().accept(event);
      }
    } catch (LogException failed) {
      notice = Explained.of(failed);
    }
    publish();
  }

  void publish() {
    published.accept(build());
  }

  LiveRun watch() {
    return powerUp.watch();
  }

  boolean ended() {
    return ended;
  }

  /** Probe time of the end. */
  long endMicros() {
    return watch().translator().lastMicros();
  }

  /** What it ended with; null while it runs and where it was refused. */
  LivePowerUp.Result result() {
    return result;
  }

  /** Why it was refused or failed; null otherwise. */
  Exception failure() {
    return failure;
  }

  /** What stands beside the power-up now. */
  Snapshot.Beside beside() {
    return new Snapshot.Beside(
        setting.earlier().found(),
        sleptAtEpochMs,
        setting.moved().latest(),
        null,
        !ended && setting.gate().takenBack(),
        failure instanceof RunRefused refused ? refused.latched() : null,
        listener.lookScale(),
        builder.said(),
        builder.told(),
        untouched.offInS(),
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

  /** What there is to see now. */
  private Snapshot build() {
    LiveRun watch = powerUp == null ? null : powerUp.watch();
    Chain chain = watch == null ? null : watch.chain();
    return builder.build(
        chain,
        new SnapshotBuilder.Outside(
            phase(chain),
            setting.kind(),
            powerUp == null ? null : powerUp.number(),
            setting.setup().label(),
            notice,
            countdownS,
            null,
            setting.port(),
            setting.logFile(),
            watch == null ? 0 : watch.conversions().lost(),
            !setting.setup().raw(),
            chain == null ? null : chain.capture(),
            SnapshotParts.limits(builder.sheet()),
            // What is over asks nothing any more.
            ended || setting.gate().open() ? List.of() : setting.gate().questions(),
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

  /** Publishes snapshots. */
  private final class Progress implements RunProgress {
    @Override
    public void started(ProbeHello hello) {
      notice = null;
    }

    @Override
    public void tick() {
      Long slept = setting.sleepWatch().look();
      if (slept != null) {
        sleptAtEpochMs = slept;
      }
      untouched.follow(watch(), nobodyBound());
      long now = setting.time().monotonicNanos();
      if (now - publishedNanos >= SNAPSHOT_NANOS) {
        publishedNanos = now;
        publish();
      }
    }

    /** On, and neither a soak nor a time that was asked for. */
    private boolean nobodyBound() {
      return step == RunStep.ON
          && !setting.setup().observe()
          && setting.setup().forMicros() == null
          && watch().mode().mode() != BenchMode.SOAK;
    }

    @Override
    public void waiting(Worded words) {
      notice = words;
      publish();
    }

    @Override
    public void limitAnswer(LimitMove move, boolean taken, Worded why) {
      setting.moved().answered(move, taken, why);
    }

    @Override
    public void countdown(int seconds) {
      countdownS = seconds > 0 ? seconds : null;
    }

    @Override
    public void step(RunStep next) {
      step = next;
      publish();
    }
  }
}
