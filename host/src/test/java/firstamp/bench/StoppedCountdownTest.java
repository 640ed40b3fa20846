package firstamp.bench;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.emulate.ProbeOptions;
import firstamp.emulate.Scenarios;
import firstamp.emulate.line.Pace;
import firstamp.log.BenchLog;
import firstamp.model.JobSheet;
import firstamp.model.TimeSource;
import firstamp.pipeline.ChainListener;
import firstamp.pipeline.ProbeSettings;
import firstamp.run.LivePowerUp;
import firstamp.run.LoggedRun;
import firstamp.run.RunProgress;
import firstamp.run.RunSetup;
import firstamp.run.RunStep;
import firstamp.run.SheetTexts;
import firstamp.run.questions.ArmGate;
import firstamp.run.questions.OpenQuestion;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.BooleanSupplier;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A countdown that somebody stops: the switch stays open until the go is given again. */
@Timeout(60)
class StoppedCountdownTest {
  @TempDir private Path folder;
  private BenchLog log;
  private LiveBench bench;
  private final AtomicInteger turns = new AtomicInteger();

  /** A window's gate; what is asked for is done at the first second of the countdown. */
  private void start(Runnable atCountdown) throws Exception {
    JobSheet sheet = LoggedRun.sheet("healthy");
    String json = Scenarios.sheetJson("healthy");
    log = BenchLog.open(folder.resolve("bench.db"), TimeSource.system());
    ArmGate gate = new ArmGate(List.of());
    RunSetup setup =
        new RunSetup(
            sheet,
            new ProbeSettings(sheet),
            null,
            true,
            1_000_000L,
            0,
            false,
            2_000_000,
            false,
            gate);
    AtomicInteger countdowns = new AtomicInteger();
    bench =
        new LiveBench(
            setup,
            TimeSource.system(),
            Snapshot.Kind.EMULATED,
            null,
            "bench.db",
            gate,
            new ChainListener() {},
            (listener, progress, restoreTrip) ->
                new LivePowerUp(
                    log,
                    new SheetTexts(sheet.set().name(), json, json),
                    setup.restoring(restoreTrip),
                    () -> Scenarios.open("healthy", ProbeOptions.of(1, Pace.MAX)),
                    TimeSource.system(),
                    listener,
                    new Told(progress) {
                      @Override
                      public void countdown(int seconds) {
                        super.countdown(seconds);
                        if (countdowns.getAndIncrement() == 0) {
                          atCountdown.run();
                        }
                      }
                    }));
    bench.start();
  }

  private class Told implements RunProgress {
    private final RunProgress outside;

    Told(RunProgress outside) {
      this.outside = outside;
    }

    @Override
    public void tick() {
      turns.incrementAndGet();
      outside.tick();
    }

    @Override
    public void countdown(int seconds) {
      outside.countdown(seconds);
    }

    @Override
    public void step(RunStep step) {
      outside.step(step);
    }
  }

  private static void await(BooleanSupplier condition) throws InterruptedException {
    while (!condition.getAsBoolean()) {
      Thread.onSpinWait();
      if (Thread.interrupted()) {
        throw new InterruptedException();
      }
    }
  }

  private void awaitAsked() throws InterruptedException {
    await(() -> !bench.snapshot().questions().isEmpty() || ended());
  }

  private boolean ended() {
    return bench.snapshot().phase() == Snapshot.Phase.ENDED;
  }

  @AfterEach
  void close() throws Exception {
    bench.close();
    log.close();
  }

  @Test
  void asksForTheGoAgainAndSwitchesOnWithIt() throws Exception {
    start(() -> bench.off());
    awaitAsked();
    int before = turns.get();
    // 4 s of probe time and more: far longer than the countdown.
    await(() -> turns.get() > before + 400 || ended());
    Snapshot stopped = bench.snapshot();
    assertThat(stopped.phase()).isEqualTo(Snapshot.Phase.OPEN);
    assertThat(stopped.questions()).extracting(OpenQuestion::id).containsExactly("hands-out");
    assertThat(stopped.countdownS()).isNull();
    assertThat(stopped.beside().stopped()).isTrue();
    bench.answer("hands-out", true);
    await(this::ended);
    assertThat(bench.result().summary().onMs()).isGreaterThan(900);
    assertThat(bench.snapshot().beside().stopped()).isFalse();
    assertThat(log.list()).as("one power-up, with all that was logged before").hasSize(1);
  }

  @Test
  void aSecondStrokeRightAfterTheFirstIsTheSame() throws Exception {
    start(
        () -> {
          bench.off();
          bench.off();
        });
    awaitAsked();
    assertThat(bench.snapshot().phase()).isEqualTo(Snapshot.Phase.OPEN);
    bench.answer("hands-out", false);
    await(this::ended);
    assertThat(bench.snapshot().times().closedMs()).as("a no ends it").isNull();
    assertThat(bench.result().summary().ended()).isEqualTo("user-off");
  }

  @Test
  void leavingEndsItForGood() throws Exception {
    start(() -> bench.leave());
    await(this::ended);
    assertThat(bench.result().summary().ended()).isEqualTo("user-off");
    assertThat(bench.snapshot().times().closedMs()).isNull();
  }
}
