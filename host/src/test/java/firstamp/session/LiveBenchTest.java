package firstamp.session;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.emulate.Pace;
import firstamp.emulate.ProbeOptions;
import firstamp.emulate.Scenarios;
import firstamp.log.BenchLog;
import firstamp.model.AlarmState;
import firstamp.model.Happening;
import firstamp.model.JobSheet;
import firstamp.model.LimitKind;
import firstamp.model.ProbeEvent;
import firstamp.model.ProbePort;
import firstamp.model.Reading;
import firstamp.model.TimeSource;
import java.io.IOException;
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
    run(scenario, also, 3_000_000L, () -> {});
  }

  private void run(String scenario, ChainListener also, Long forMicros, Runnable before)
      throws Exception {
    JobSheet sheet = LoggedRun.sheet(scenario);
    log = BenchLog.open(folder.resolve("bench.db"), TimeSource.system());
    RunSetup setup =
        new RunSetup(
            sheet,
            new ProbeSettings(sheet),
            null,
            true,
            forMicros,
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
    before.run();
    bench.start();
    await(() -> bench.snapshot().phase() == Snapshot.Phase.ENDED);
  }

  /** A box that stays in its hand between two power-ups, with what it remembers. */
  private record Kept(ProbePort box) implements ProbePort {
    @Override
    public int read(byte[] buffer, int timeoutMillis) throws IOException {
      return box.read(buffer, timeoutMillis);
    }

    @Override
    public void write(byte[] bytes) throws IOException {
      box.write(bytes);
    }

    @Override
    public TimeSource time() {
      return box.time();
    }

    @Override
    public String describe() {
      return "probe box";
    }

    @Override
    public void close() {
      // The cable is pulled, the box keeps its supply.
    }
  }

  @Test
  void whatTheProbeBoxRemembersIsShownAndSwitchedOnAgainAfter() throws Exception {
    JobSheet sheet = LoggedRun.sheet("wire-short");
    log = BenchLog.open(folder.resolve("bench.db"), TimeSource.system());
    ProbePort box = Scenarios.open("wire-short", ProbeOptions.of(1, Pace.MAX));
    LiveBench first = kept(sheet, new Kept(box));
    first.start();
    await(() -> first.snapshot().phase() == Snapshot.Phase.ENDED);
    int number = first.snapshot().trip().number();
    first.close();

    bench = kept(sheet, new Kept(box));
    bench.start();
    await(() -> bench.snapshot().phase() == Snapshot.Phase.ENDED);
    RunRefused.Latched latched = bench.snapshot().beside().latched();
    assertThat(latched.number()).isEqualTo(number);
    assertThat(latched.cause()).isEqualTo(first.snapshot().trip().cause());
    assertThat(bench.snapshot().powerUp()).as("nothing was begun").isNull();
    assertThat(log.list()).hasSize(1);

    bench.restore(number + 1);
    await(() -> refusedAnew(latched));
    assertThat(bench.snapshot().beside().latched()).as("another number").isEqualTo(latched);
    assertThat(log.list()).hasSize(1);

    bench.restore(number);
    await(() -> bench.result() != null && bench.snapshot().phase() == Snapshot.Phase.ENDED);
    assertThat(bench.snapshot().beside().latched()).isNull();
    assertThat(bench.result().summary().onMs()).isGreaterThan(0);
    assertThat(log.list()).hasSize(2);
    box.close();
  }

  private boolean refusedAnew(RunRefused.Latched before) {
    RunRefused.Latched now = bench.snapshot().beside().latched();
    return now != null && now != before;
  }

  private LiveBench kept(JobSheet sheet, ProbePort port) {
    RunSetup setup =
        new RunSetup(
            sheet,
            new ProbeSettings(sheet),
            null,
            true,
            5_000_000L,
            0,
            false,
            2_000_000,
            false,
            ArmGate.alwaysOpen());
    String json = Scenarios.sheetJson("wire-short");
    return new LiveBench(
        setup,
        time,
        Snapshot.Kind.PROBE,
        "port",
        "bench.db",
        setup.gate(),
        new ChainListener() {},
        (listener, progress, restoreTrip) ->
            new LivePowerUp(
                log,
                new SheetTexts(sheet.set().name(), json, json),
                setup.restoring(restoreTrip),
                () -> port,
                TimeSource.system(),
                listener,
                progress));
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
  void waitingToBeSwitchedOnAgainIsNoSleep() throws Exception {
    run("healthy", new ChainListener() {});
    time.addMillis(60_000);
    int first = bench.snapshot().powerUp();
    bench.restore(1);
    await(
        () ->
            bench.snapshot().phase() == Snapshot.Phase.ENDED
                && bench.snapshot().powerUp() != null
                && bench.snapshot().powerUp() > first);
    assertThat(bench.snapshot().beside().sleptAtEpochMs()).isNull();
  }

  @Test
  void soakThatWasAskedForBeforehandEndsWithItsTime() throws Exception {
    run(
        "healthy",
        new ChainListener() {},
        null,
        () -> bench.mode(BenchMode.SOAK, null, 1_500_000L));
    assertThat(bench.result().summary().ended()).isEqualTo("time");
    assertThat(bench.result().summary().onMs()).isBetween(1_500.0, 2_000.0);
    assertThat(bench.snapshot().marks()).as("a mode is no mark").isEmpty();
    assertThat(bench.snapshot().beside().said())
        .extracting(Snapshot.Said::what)
        .containsExactly(
            new Happening.ModeSet(Happening.Mode.SOAK),
            new Happening.ModeSet(Happening.Mode.SOAK_OVER));
  }

  @Test
  void whatIsSaidInTheWindowIsInTheStreamAndInItsReplay() throws Exception {
    run(
        "healthy",
        new ChainListener() {},
        1_000_000L,
        () -> {
          bench.happened(new Happening.Recording(Happening.RecordState.ON));
          bench.happened(new Happening.SetChanged(""));
        });
    assertThat(bench.snapshot().beside().recording()).isEqualTo(Happening.RecordState.ON);
    assertThat(log.find("last").events())
        .filteredOn(ProbeEvent.Happened.class::isInstance)
        .extracting(event -> ((ProbeEvent.Happened) event).what().kind())
        .containsExactly("record-on", "change");
  }

  @Test
  void handsInThatWasAskedForBeforehandBeginsOnceTheSetHasRunForSevenSeconds() throws Exception {
    run("healthy", new ChainListener() {}, 9_000_000L, () -> bench.mode(BenchMode.HANDS_IN, null));
    assertThat(bench.mode().mode()).isEqualTo(BenchMode.HANDS_IN);
    assertThat(bench.mode().limitA()).isNotNull().isLessThan(1.0);
    assertThat(log.find("last").events()).anyMatch(ProbeEvent.LimitChanged.class::isInstance);
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
