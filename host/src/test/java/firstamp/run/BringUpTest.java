package firstamp.run;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import firstamp.emulate.ProbeOptions;
import firstamp.emulate.Scenarios;
import firstamp.emulate.line.Pace;
import firstamp.model.Happening;
import firstamp.model.JobSheet;
import firstamp.model.OffCause;
import firstamp.pipeline.Chain;
import firstamp.pipeline.ChainListener;
import firstamp.pipeline.ProbeSettings;
import firstamp.pipeline.RunRefused;
import firstamp.pipeline.Summaries;
import firstamp.run.questions.ArmGate;
import firstamp.sheet.Defaults;
import firstamp.sheet.SheetReader;
import firstamp.supply.BenchSupply;
import firstamp.supply.ResponderLine;
import firstamp.supply.StrictResponder;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Steps and a bench supply on the emulated probe. */
class BringUpTest {
  private final List<String> said = new ArrayList<>();
  private Runnable onClosed = () -> {};
  private String outcome;

  private static JobSheet sheet(String json) {
    try {
      return Defaults.fill(SheetReader.parse("s", json).sheet());
    } catch (firstamp.sheet.SheetException bad) {
      throw new AssertionError(bad);
    }
  }

  private LiveRun run(String scenario, JobSheet rules, JobSheet probe, Long forMicros) {
    RunSetup setup =
        new RunSetup(
            rules,
            new ProbeSettings(probe),
            null,
            true,
            forMicros,
            0,
            false,
            2_000_000,
            false,
            ArmGate.alwaysOpen());
    return new LiveRun(
        setup,
        () -> Scenarios.open(scenario, ProbeOptions.of(1, Pace.MAX)),
        new NoRecorder(),
        new ChainListener() {
          @Override
          public void happened(Happening what, double atMs) {
            said.add(what.words());
          }

          @Override
          public void on() {
            onClosed.run();
          }
        },
        new RunProgress() {});
  }

  private Chain finish(LiveRun run) throws Exception {
    Chain chain = run.run();
    outcome = Summaries.of(null, "u", chain, run.conversions(), null, false).outcome();
    return chain;
  }

  private LiveRun staged(String scenario) {
    JobSheet effective = sheet(Scenarios.sheetJson(scenario));
    LiveRun run = run(scenario, StagedSheet.on(effective), StagedSheet.forProbe(effective), null);
    run.bringUp();
    return run;
  }

  @Test
  void goesThroughAllStepsAndLeavesATableInTheEvents() throws Exception {
    Chain chain = finish(staged("bring-up"));
    assertThat(said)
        .as("said %s, alarms %s", said, chain.alarms())
        .contains("step 4 of 4 done: all steps are done");
    assertThat(said).anyMatch(text -> text.startsWith("step 1 of 4 begun: 3 V, at most"));
    assertThat(said)
        .anyMatch(text -> text.matches("step 4 of 4 settled: (12(\\.0)?|11\\.9|12\\.1) V.*"));
    assertThat(chain.ended()).isEqualTo("time");
    assertThat(outcome).isEqualTo("normal");
    assertThat(chain.rules().notWatched()).anyMatch(gap -> gap.what().startsWith("rail-window"));
  }

  @Test
  void aStepThatDrawsTooMuchSwitchesOffAndIsAFinding() throws Exception {
    Chain chain = finish(staged("bring-up-leaky"));
    assertThat(said)
        .as("said %s, alarms %s", said, chain.alarms())
        .anyMatch(text -> text.contains("stopped: ") && text.contains("allows"));
    assertThat(chain.offBy()).isEqualTo(OffCause.RULE);
    assertThat(outcome).isEqualTo("alarm");
  }

  private final StrictResponder responder = new StrictResponder();
  private final ResponderLine line = new ResponderLine(responder);

  private BenchSupply supply() {
    BenchSupply supply = new BenchSupply(line);
    supply.start();
    return supply;
  }

  @Test
  void aTripSwitchesTheSupplyOffToo() throws Exception {
    JobSheet effective = sheet(Scenarios.sheetJson("wire-short"));
    LiveRun run = run("wire-short", effective, effective, 5_000_000L);
    run.supply(supply(), 12, 1.5);
    Chain chain = finish(run);
    assertThat(chain.offBy()).isEqualTo(OffCause.TRIP);
    assertThat(responder.volts()).isEqualTo(12);
    assertThat(responder.ampere()).isEqualTo(1.5);
    assertThat(responder.heard()).containsSubsequence("OUTP ON", "OUTP OFF");
    assertThat(responder.on()).isFalse();
    assertThat(line.closed()).isTrue();
  }

  @Test
  void aSupplyThatFallsSilentOpensTheSwitchAndIsToldToSwitchOff() throws Exception {
    JobSheet effective = sheet(Scenarios.sheetJson("healthy"));
    LiveRun run = run("healthy", effective, effective, null);
    run.supply(supply(), 12, 1.5);
    onClosed = responder::fallsSilent;
    Chain chain = finish(run);
    assertThat(chain.ended()).isEqualTo("rule-off");
    assertThat(said).anyMatch(text -> text.startsWith("the bench supply does not answer"));
    assertThat(responder.on()).isFalse();
    assertThat(outcome).isEqualTo("alarm");
  }

  @Test
  void aSupplyThatDoesNotAnswerIsNotArmed() {
    responder.fallsSilent();
    JobSheet effective = sheet(Scenarios.sheetJson("healthy"));
    LiveRun run = run("healthy", effective, effective, 1_000_000L);
    run.supply(supply(), 12, 1.5);
    assertThatThrownBy(run::run)
        .isInstanceOfSatisfying(
            RunRefused.class,
            refused -> assertThat(refused.kind()).isEqualTo(RunRefused.Kind.ARMING))
        .hasMessageContaining("does not answer *IDN?");
    assertThat(responder.heard()).contains("OUTP OFF").doesNotContain("OUTP ON");
  }
}
