package firstamp.window;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.app.QuestionFlow;
import firstamp.app.ReadySheet;
import firstamp.emulate.ProbeOptions;
import firstamp.emulate.Scenarios;
import firstamp.emulate.line.Pace;
import firstamp.log.BenchLog;
import firstamp.model.Summary;
import firstamp.model.TimeSource;
import firstamp.pipeline.ChainListener;
import firstamp.pipeline.ProbeSettings;
import firstamp.run.LivePowerUp;
import firstamp.run.RunProgress;
import firstamp.run.RunSetup;
import firstamp.run.questions.ArmGate;
import firstamp.sheet.SheetQuestion;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Limits that follow from typed answers, on the emulated probe with a set that has nothing wrong:
 * 12 V, 3100 uF as the first look sees them, a motor that starts at 7 V.
 */
class AnsweredLimitsTest {
  @TempDir private Path folder;

  private static String typed(Map<SheetQuestion, String> besides, String... first) {
    QuestionFlow flow = new QuestionFlow(null);
    for (String answer : first) {
      assertThat(flow.answer(answer)).as(answer).isTrue();
    }
    if (flow.question() == null) {
      flow.more();
    }
    while (flow.question() != null) {
      assertThat(flow.answer(besides.getOrDefault(flow.question(), ""))).isTrue();
    }
    return flow.sheetJson();
  }

  private Summary run(String scenario, String json) throws Exception {
    ReadySheet sheet = ReadySheet.of("typed", json);
    RunSetup setup =
        new RunSetup(
            sheet.effective(),
            new ProbeSettings(sheet.effective()),
            null,
            true,
            2_000_000L,
            0,
            false,
            2_000_000L,
            false,
            ArmGate.alwaysOpen());
    TimeSource time = TimeSource.system();
    try (BenchLog log = BenchLog.open(folder.resolve("typed.db"), time)) {
      return new LivePowerUp(
              log,
              sheet.texts(),
              setup,
              () -> Scenarios.open(scenario, ProbeOptions.of(1, Pace.MAX)),
              time,
              new ChainListener() {},
              new RunProgress() {})
          .run()
          .summary();
    }
  }

  @Test
  void aFuseOfOneAmpereDoesNotSwitchAHealthySetOff() throws Exception {
    String json =
        typed(
            Map.of(
                SheetQuestion.FUSE, "1",
                SheetQuestion.SUPPLY_LIMIT, "1.5",
                SheetQuestion.MOTOR, "yes"),
            "Tervane reel recorder",
            "12",
            "negative",
            "bench");
    Summary result = run("healthy", json);
    assertThat(result.ended()).isEqualTo("time");
    assertThat(result.tripCause()).isNull();
    assertThat(result.alarms()).noneMatch(alarm -> alarm.rule().equals("over-current"));
  }

  @Test
  void nothingKnownAtAllDoesNotSwitchAHealthySetOffEither() throws Exception {
    String json = typed(Map.of(), "Tervane reel recorder", "12", "negative", "bench");
    Summary result = run("healthy", json);
    assertThat(result.tripCause()).isNull();
  }

  @Test
  void aShortIsCutByTheLooseLimitToo() throws Exception {
    String json = typed(Map.of(), "Tervane reel recorder", "12", "negative", "bench");
    Summary result = run("wire-short", json);
    assertThat(result.tripCause()).isEqualTo("running");
  }
}
