package firstamp.session;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.emulate.Pace;
import firstamp.emulate.ProbeOptions;
import firstamp.emulate.Scenarios;
import firstamp.log.BenchLog;
import firstamp.model.AlarmState;
import firstamp.model.JobSheet;
import firstamp.model.LimitKind;
import firstamp.model.ProbeEvent;
import firstamp.model.Reading;
import firstamp.model.TimeSource;
import java.nio.file.Path;
import java.util.List;
import java.util.function.BooleanSupplier;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A live power-up behind the window: what sleep, the end and a limit moved too late do to it. */
@Timeout(60)
class LiveBenchTest {
  @TempDir private Path folder;
  private final HandTime time = new HandTime();
  private BenchLog log;
  private LiveBench bench;

  private void run(String scenario, ChainListener also) throws Exception {
    JobSheet sheet = LoggedRun.sheet(scenario);
    log = BenchLog.open(folder.resolve("bench.db"), TimeSource.system());
    RunSetup setup =
        new RunSetup(
            sheet,
            new ProbeSettings(sheet),
            null,
            true,
            3_000_000L,
            0,
            false,
            2_000_000,
            false,
            ArmGate.alwaysOpen());
    bench =
        new LiveBench(
            setup,
            time,
            Snapshot.Kind.EMULATED,
            null,
            "bench.db",
            setup.gate(),
            also,
            (listener, progress, restoreTrip) ->
                new LivePowerUp(
                    log,
                    new SheetTexts(
                        sheet.set().name(),
                        Scenarios.sheetJson(scenario),
                        Scenarios.sheetJson(scenario)),
                    setup,
                    () -> Scenarios.open(scenario, ProbeOptions.of(1, Pace.MAX)),
                    TimeSource.system(),
                    listener,
                    progress));
    bench.start();
    await(() -> bench.snapshot().phase() == Snapshot.Phase.ENDED);
  }

  private static void await(BooleanSupplier condition) throws InterruptedException {
    while (!condition.getAsBoolean()) {
      Thread.onSpinWait();
      if (Thread.interrupted()) {
        throw new InterruptedException();
      }
    }
  }

  @AfterEach
  void close() throws Exception {
    if (bench != null) {
      bench.close();
      log.close();
    }
  }

  @Test
  void knowsWhenTheComputerSlept() throws Exception {
    long[] before = new long[1];
    run(
        "healthy",
        new ChainListener() {
          private int count;

          @Override
          public void reading(Reading reading, double atMs) {
            if (++count == 500) {
              before[0] = time.epochMillis();
              time.sleepMillis(3_600_000);
            }
          }
        });
    assertThat(bench.snapshot().beside().sleptAtEpochMs()).isEqualTo(before[0]);
  }

  @Test
  void hasNotSleptWhenItHasNot() throws Exception {
    run("healthy", new ChainListener() {});
    assertThat(bench.snapshot().beside().sleptAtEpochMs()).isNull();
  }

  @Test
  void marksWordsAndSeenAfterTheEndAreShownAndKept() throws Exception {
    run("no-draw", new ChainListener() {});
    bench.mark("");
    await(() -> bench.snapshot().marks().size() == 1);
    bench.note(1, "the lamp came on");
    await(() -> bench.snapshot().marks().get(0).text().equals("the lamp came on"));
    bench.acknowledge();
    await(
        () ->
            bench.snapshot().alarms().stream()
                .noneMatch(alarm -> alarm.state() == AlarmState.UNACKNOWLEDGED));
    List<ProbeEvent> events = log.find("last").events();
    assertThat(events.subList(events.size() - 3, events.size()))
        .hasOnlyElementsOfTypes(
            ProbeEvent.Marked.class, ProbeEvent.Noted.class, ProbeEvent.Acknowledged.class);
    assertThat(bench.result().summary().alarms())
        .anyMatch(alarm -> alarm.state() == AlarmState.UNACKNOWLEDGED);
  }

  @Test
  void aLimitMovedAfterTheEndHoldsFromTheNextTime() throws Exception {
    run("healthy", new ChainListener() {});
    bench.limit(new LimitMove(LimitKind.RUNNING_A, 0, 1.3));
    assertThat(bench.snapshot().beside().moved().state()).isEqualTo(Snapshot.MoveState.NEXT_TIME);
    double before = bench.snapshot().limits().runningA();
    bench.restore(1);
    await(
        () ->
            bench.snapshot().phase() == Snapshot.Phase.ENDED
                && bench.snapshot().limits().runningA() != before);
    assertThat(bench.snapshot().limits().runningA()).isEqualTo(1.3);
    assertThat(log.find("last").events()).anyMatch(ProbeEvent.LimitChanged.class::isInstance);
  }
}
