package firstamp.run;

import firstamp.bench.SnapshotBuilder;
import firstamp.emulate.ProbeOptions;
import firstamp.emulate.Scenarios;
import firstamp.emulate.line.Pace;
import firstamp.log.BenchLog;
import firstamp.log.PowerUpReader;
import firstamp.model.JobSheet;
import firstamp.model.TimeSource;
import firstamp.model.samples.Reading;
import firstamp.model.text.Worded;
import firstamp.pipeline.ChainListener;
import firstamp.pipeline.ForwardingChainListener;
import firstamp.pipeline.ProbeSettings;
import firstamp.run.questions.ArmGate;
import firstamp.sheet.Defaults;
import firstamp.sheet.SheetException;
import firstamp.sheet.SheetReader;
import firstamp.trend.Course;
import java.nio.file.Path;

/** A power-up of an invented set, run as fast as it goes into a log. */
public final class LoggedRun {
  private final JobSheet sheet;
  private final BenchLog log;
  private final LivePowerUp powerUp;
  public final Course course;
  public final SnapshotBuilder builder;

  /**
   * A run that has not started.
   *
   * @param atReading told the count of readings, with the run
   */
  public LoggedRun(Path folder, String scenario, long forMicros, boolean raw, EachReading atReading)
      throws Exception {
    sheet = sheet(scenario);
    log = BenchLog.open(folder.resolve("bench.db"), TimeSource.system());
    builder = new SnapshotBuilder(sheet);
    course = builder.course();
    RunSetup setup =
        new RunSetup(
            sheet,
            new ProbeSettings(sheet),
            null,
            raw,
            forMicros,
            0,
            false,
            2_000_000,
            false,
            ArmGate.alwaysOpen());
    int[] readings = {0};
    LivePowerUp[] made = new LivePowerUp[1];
    ChainListener listener =
        new ForwardingChainListener(builder) {
          @Override
          public void reading(Reading reading, double atMs) {
            builder.add(reading, made[0].watch().chain().scaling());
            atReading.at(++readings[0], made[0].watch());
          }
        };
    powerUp =
        new LivePowerUp(
            log,
            new SheetTexts(
                sheet.set().name(), Scenarios.sheetJson(scenario), Scenarios.sheetJson(scenario)),
            setup,
            () -> Scenarios.open(scenario, ProbeOptions.of(1, Pace.MAX)),
            TimeSource.system(),
            listener,
            new RunProgress() {
              @Override
              public void limitAnswer(LimitMove move, boolean taken, Worded why) {
                atReading.answer(move, taken, why);
              }
            });
    made[0] = powerUp;
  }

  /** What a test does while the run continues. */
  public interface EachReading {
    /** After a reading. */
    void at(int count, LiveRun run);

    /** When the probe has answered about a limit. */
    default void answer(LimitMove move, boolean taken, Worded why) {}

    /** Nothing. */
    static EachReading nothing() {
      return (count, run) -> {};
    }
  }

  public static JobSheet sheet(String scenario) throws SheetException {
    return Defaults.fill(SheetReader.parse(scenario, Scenarios.sheetJson(scenario)).sheet());
  }

  public LivePowerUp.Result run() throws Exception {
    return powerUp.run();
  }

  public JobSheet sheet() {
    return sheet;
  }

  public BenchLog log() {
    return log;
  }

  public PowerUpReader reader() throws Exception {
    return log.find("last");
  }
}
