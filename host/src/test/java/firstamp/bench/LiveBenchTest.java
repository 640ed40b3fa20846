package firstamp.bench;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.emulate.Pace;
import firstamp.emulate.ProbeOptions;
import firstamp.emulate.Scenarios;
import firstamp.emulate.Waveforms;
import firstamp.log.BenchLog;
import firstamp.model.AlarmState;
import firstamp.model.Difference;
import firstamp.model.Happening;
import firstamp.model.JobSheet;
import firstamp.model.LimitKind;
import firstamp.model.OffReason;
import firstamp.model.ProbeEvent;
import firstamp.model.ProbePort;
import firstamp.model.TimeSource;
import firstamp.model.samples.Reading;
import firstamp.pipeline.ChainListener;
import firstamp.pipeline.ProbeSettings;
import firstamp.pipeline.RunRefused;
import firstamp.run.BenchMode;
import firstamp.run.HandTime;
import firstamp.run.LimitMove;
import firstamp.run.LivePowerUp;
import firstamp.run.LoggedRun;
import firstamp.run.RunSetup;
import firstamp.run.SheetTexts;
import firstamp.run.TripsInARow;
import firstamp.run.questions.ArmGate;
import firstamp.study.PowerUpStudy;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
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
    return kept(sheet, port, ArmGate.alwaysOpen());
  }

  private LiveBench kept(JobSheet sheet, ProbePort port, ArmGate gate) {
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
            gate);
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
        () -> {
          Snapshot now = bench.snapshot();
          return now.phase() == Snapshot.Phase.ENDED
              && now.powerUp() != null
              && now.powerUp() > first;
        });
    assertThat(bench.snapshot().beside().sleptAtEpochMs()).isNull();
  }

  /** A line on which nobody is. */
  private static final class Nobody implements ProbePort {
    private final HandTime clock = new HandTime();

    @Override
    public int read(byte[] buffer, int timeoutMillis) {
      clock.addMillis(timeoutMillis);
      return 0;
    }

    @Override
    public void write(byte[] bytes) {
      // Into the void.
    }

    @Override
    public TimeSource time() {
      return clock;
    }

    @Override
    public String describe() {
      return "/dev/ttyS0";
    }

    @Override
    public void close() {
      // There is nothing to close.
    }
  }

  @Test
  void aPortWithoutAProbeBoxIsToldWithinFiveSecondsAndNothingIsAskedAnyMore() throws Exception {
    JobSheet sheet = LoggedRun.sheet("healthy");
    log = BenchLog.open(folder.resolve("bench.db"), TimeSource.system());
    Nobody port = new Nobody();
    long before = port.clock.epochMillis();
    bench = kept(sheet, port, new ArmGate(List.of("floating-supply", "above-60")));
    bench.start();
    await(() -> bench.snapshot().phase() == Snapshot.Phase.ENDED);
    assertThat(port.clock.epochMillis() - before).isLessThan(5_000);
    assertThat(bench.snapshot().beside().neverAnswered()).isTrue();
    assertThat(bench.snapshot().questions()).isEmpty();
    assertThat(bench.snapshot().notice()).contains("/dev/ttyS0").contains("Choose another port");
  }

  @Test
  void whatTheProbeBoxRefusesIsNoPortWithoutAProbeBox() throws Exception {
    JobSheet sheet = LoggedRun.sheet("wire-short");
    log = BenchLog.open(folder.resolve("bench.db"), TimeSource.system());
    ProbePort box = Scenarios.open("wire-short", ProbeOptions.of(1, Pace.MAX));
    LiveBench first = kept(sheet, new Kept(box));
    first.start();
    await(() -> first.snapshot().phase() == Snapshot.Phase.ENDED);
    first.close();
    bench = kept(sheet, new Kept(box), new ArmGate(List.of("above-60")));
    bench.start();
    await(() -> bench.snapshot().phase() == Snapshot.Phase.ENDED);
    assertThat(bench.snapshot().beside().neverAnswered()).isFalse();
    assertThat(bench.snapshot().questions()).as("no dead card").isEmpty();
    box.close();
  }

  @Test
  void anotherFeedKeepsTheSwitchOpenAndIsNamed() throws Exception {
    // After the first power-up the rails of this set stay up for minutes, as on a battery.
    JobSheet sheet = LoggedRun.sheet("healthy");
    Path wave = folder.resolve("wave.csv");
    Files.writeString(
        wave, "t_s,supply_V,supply_A,rail1_V\n0,12,0.1,0\n0.2,12,0.1,8.2\n60,12,0.1,8.2\n");
    Path front = folder.resolve("front.json");
    Files.writeString(front, "{\"decayMs\":1000000}");
    log = BenchLog.open(folder.resolve("bench.db"), TimeSource.system());
    ProbePort box = Waveforms.open(wave, front, 12.0, ProbeOptions.of(1, Pace.MAX));
    LiveBench first = kept(sheet, new Kept(box));
    first.start();
    await(() -> first.snapshot().phase() == Snapshot.Phase.ENDED);
    assertThat(first.result().summary().onMs()).isGreaterThan(0);
    first.close();
    bench = kept(sheet, new Kept(box));
    bench.start();
    await(() -> bench.snapshot().phase() == Snapshot.Phase.ENDED);
    assertThat(bench.failure())
        .isInstanceOf(RunRefused.class)
        .hasMessageContaining("while the switch is open: a battery or another feed is in");
    assertThat(bench.snapshot().closedMs()).as("never closed").isNull();
    box.close();
  }

  @Test
  void nobodyThereForElevenMinutesSwitchesOff() throws Exception {
    List<Integer> left = new CopyOnWriteArrayList<>();
    run("healthy", slowHours(left, 0), null, () -> {});
    assertThat(bench.result().summary().ended()).isEqualTo("time");
    assertThat(left).as("warned for a minute").contains(60).isSortedAccordingTo((a, b) -> b - a);
    assertThat(bench.snapshot().beside().untouchedOffInS()).isZero();
    assertThat(bench.snapshot().beside().sleptAtEpochMs()).isNull();
  }

  @Test
  void aTouchKeepsItOn() throws Exception {
    List<Integer> left = new CopyOnWriteArrayList<>();
    run("healthy", slowHours(left, 310), null, () -> {});
    assertThat(left).as("warned once, and once more after the touch").contains(60);
    int again = left.lastIndexOf(60);
    assertThat(left.subList(0, again)).as("the first warning was withdrawn").isNotEmpty();
    assertThat(bench.result().summary().ended()).isEqualTo("time");
  }

  @Test
  void inASoakAndWhereATimeWasAskedForNobodyHasToBeThere() throws Exception {
    List<Integer> left = new CopyOnWriteArrayList<>();
    run("healthy", slowHours(left, 0), 9_000_000L, () -> {});
    assertThat(bench.result().summary().onMs()).isGreaterThan(8_900);
    run2("healthy", slowHours(left, 0));
    assertThat(bench.result().summary().onMs()).isGreaterThan(5_900);
    assertThat(left).isEmpty();
  }

  private void run2(String scenario, ChainListener also) throws Exception {
    close();
    bench = null;
    run(scenario, also, null, () -> bench.mode(BenchMode.SOAK, null, 6_000_000L));
  }

  /**
   * Hours in seconds: with every reading from the closing on four seconds go by on the computer.
   *
   * @param touchAt reading at which somebody touches a key, 0 = nobody does
   */
  private ChainListener slowHours(List<Integer> left, int touchAt) {
    return new ChainListener() {
      private int count;

      @Override
      public void reading(Reading reading, double atMs) {
        if (bench.snapshot().phase() != Snapshot.Phase.ON) {
          return;
        }
        time.addMillis(2_000);
        Integer now = bench.snapshot().beside().untouchedOffInS();
        if (now != null && (left.isEmpty() || !left.get(left.size() - 1).equals(now))) {
          left.add(now);
        }
        if (++count == touchAt) {
          bench.touched();
        }
      }
    };
  }

  @Test
  void whyItWasSwitchedOffIsKeptAlsoAfterTheEnd() throws Exception {
    run("healthy", new ChainListener() {});
    bench.explainOff(OffReason.SMELL);
    await(() -> !bench.snapshot().beside().told().isEmpty());
    bench.explainOff(OffReason.WARM);
    await(() -> bench.snapshot().beside().told().size() == 2);
    PowerUpStudy study = PowerUpStudy.of(log.find("last"));
    assertThat(study.told())
        .extracting(told -> ((ProbeEvent.OffExplained) told).reason())
        .containsExactly(OffReason.SMELL, OffReason.WARM);
    assertThat(study.summary().onMs()).isEqualTo(bench.result().summary().onMs());
  }

  @Test
  void whatIsDifferentAfterATripIsKeptWithTheNextPowerUp() throws Exception {
    JobSheet sheet = LoggedRun.sheet("wire-short");
    log = BenchLog.open(folder.resolve("bench.db"), TimeSource.system());
    ProbePort box = Scenarios.open("wire-short", ProbeOptions.of(1, Pace.MAX));
    bench = kept(sheet, new Kept(box));
    bench.start();
    await(() -> bench.snapshot().phase() == Snapshot.Phase.ENDED);
    int number = bench.snapshot().trip().number();
    ProbeEvent.SwitchedOnAgain what =
        new ProbeEvent.SwitchedOnAgain(0, number, Difference.NOTHING, 1, 820.0, null);
    bench.restore(what);
    await(() -> Integer.valueOf(2).equals(bench.snapshot().powerUp()));
    await(() -> bench.snapshot().phase() == Snapshot.Phase.ENDED);
    assertThat(log.find("2").events())
        .filteredOn(ProbeEvent.SwitchedOnAgain.class::isInstance)
        .singleElement()
        .isEqualTo(
            new ProbeEvent.SwitchedOnAgain(
                bench.snapshot().beside().told().get(0).micros(),
                number,
                Difference.NOTHING,
                1,
                820.0,
                null));
    TripsInARow trips =
        TripsInARow.of(log.list(), sheet.set().name(), null, TimeSource.system().epochMillis());
    assertThat(trips.count()).isEqualTo(2);
    box.close();
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
