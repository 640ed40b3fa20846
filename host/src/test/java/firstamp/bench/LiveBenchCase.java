package firstamp.bench;

import firstamp.emulate.ProbeOptions;
import firstamp.emulate.Scenarios;
import firstamp.emulate.line.Pace;
import firstamp.log.BenchLog;
import firstamp.model.JobSheet;
import firstamp.model.TimeSource;
import firstamp.pipeline.ChainListener;
import firstamp.pipeline.ProbeSettings;
import firstamp.run.HandTime;
import firstamp.run.LivePowerUp;
import firstamp.run.LoggedRun;
import firstamp.run.RunSetup;
import firstamp.run.SheetTexts;
import firstamp.run.questions.ArmGate;
import java.nio.file.Path;
import java.util.function.BooleanSupplier;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.io.TempDir;

/** A live power-up on an emulated box, as the window runs it. */
abstract class LiveBenchCase {
  @TempDir Path folder;
  final HandTime time = new HandTime();
  BenchLog log;
  LiveBench bench;

  void run(String scenario, ChainListener also) throws Exception {
    run(scenario, also, 3_000_000L, () -> {});
  }

  void run(String scenario, ChainListener also, Long forMicros, Runnable before) throws Exception {
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

  static void await(BooleanSupplier condition) throws InterruptedException {
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
}
