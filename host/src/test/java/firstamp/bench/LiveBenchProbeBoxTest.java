package firstamp.bench;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.emulate.ProbeOptions;
import firstamp.emulate.Scenarios;
import firstamp.emulate.Waveforms;
import firstamp.emulate.line.Pace;
import firstamp.log.BenchLog;
import firstamp.model.Difference;
import firstamp.model.JobSheet;
import firstamp.model.ProbeEvent;
import firstamp.model.ProbePort;
import firstamp.model.TimeSource;
import firstamp.pipeline.ChainListener;
import firstamp.pipeline.ProbeSettings;
import firstamp.pipeline.RunRefused;
import firstamp.run.HandTime;
import firstamp.run.LivePowerUp;
import firstamp.run.LoggedRun;
import firstamp.run.RunSetup;
import firstamp.run.SheetTexts;
import firstamp.run.TripsInARow;
import firstamp.run.questions.ArmGate;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/**
 * What a live power-up makes of the probe box at the port: what it remembers, another version, none
 * at all.
 */
@Timeout(60)
final class LiveBenchProbeBoxTest extends LiveBenchCase {
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
    int number = first.snapshot().findings().trip().number();
    first.close();

    bench = kept(sheet, new Kept(box));
    bench.start();
    await(() -> bench.snapshot().phase() == Snapshot.Phase.ENDED);
    RunRefused.Latched latched = bench.snapshot().beside().latched();
    assertThat(latched.number()).isEqualTo(number);
    assertThat(latched.cause()).isEqualTo(first.snapshot().findings().trip().cause());
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
    assertThat(bench.snapshot().notice().english())
        .contains("/dev/ttyS0")
        .contains("Choose another port");
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
    assertThat(bench.snapshot().times().closedMs()).as("never closed").isNull();
    box.close();
  }

  @Test
  void whatIsDifferentAfterATripIsKeptWithTheNextPowerUp() throws Exception {
    JobSheet sheet = LoggedRun.sheet("wire-short");
    log = BenchLog.open(folder.resolve("bench.db"), TimeSource.system());
    ProbePort box = Scenarios.open("wire-short", ProbeOptions.of(1, Pace.MAX));
    bench = kept(sheet, new Kept(box));
    bench.start();
    await(() -> bench.snapshot().phase() == Snapshot.Phase.ENDED);
    int number = bench.snapshot().findings().trip().number();
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
}
