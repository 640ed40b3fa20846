package firstamp.run;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Offset.offset;

import firstamp.emulate.ProbeOptions;
import firstamp.emulate.Scenarios;
import firstamp.emulate.line.Pace;
import firstamp.model.Alarm;
import firstamp.model.Happening;
import firstamp.model.JobSheet;
import firstamp.model.LimitKind;
import firstamp.model.OffCause;
import firstamp.model.ProbeEvent;
import firstamp.model.RuleId;
import firstamp.model.SwitchState;
import firstamp.model.text.Worded;
import firstamp.pipeline.Chain;
import firstamp.pipeline.ChainListener;
import firstamp.pipeline.ProbeSettings;
import firstamp.pipeline.RecentHighest;
import firstamp.pipeline.Summaries;
import firstamp.run.questions.ArmGate;
import firstamp.sheet.Defaults;
import firstamp.sheet.SheetReader;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class ModesTest {
  private final List<String> happened = new ArrayList<>();
  private final List<ProbeEvent.LimitChanged> limits = new ArrayList<>();
  private final List<Alarm> alarms = new ArrayList<>();
  private final List<BenchMode.State> said = new ArrayList<>();

  private static JobSheet sheet(String json) {
    try {
      return Defaults.fill(SheetReader.parse("s", json).sheet());
    } catch (firstamp.sheet.SheetException bad) {
      throw new AssertionError(bad);
    }
  }

  private LiveRun run(String scenario, JobSheet effective, Long forMicros) {
    ChainListener listener =
        new ChainListener() {
          @Override
          public void happened(Happening what, double atMs) {
            happened.add(what.words());
          }

          @Override
          public void limitChanged(ProbeEvent.LimitChanged event) {
            limits.add(event);
          }

          @Override
          public void alarm(Alarm alarm) {
            alarms.add(alarm);
          }
        };
    RunProgress progress =
        new RunProgress() {
          @Override
          public void mode(BenchMode.State state) {
            said.add(state);
          }
        };
    RunSetup setup =
        new RunSetup(
            effective,
            new ProbeSettings(effective),
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
        listener,
        progress);
  }

  private static JobSheet larch() {
    return sheet(Scenarios.sheetJson("healthy"));
  }

  @Test
  void handsInDrawsTheRunningLimitInToATenthAboveWhatTheSetDraws() throws Exception {
    LiveRun run = run("healthy", larch(), 9_000_000L);
    run.mode(BenchMode.HANDS_IN, null, 0);
    Chain chain = run.run();
    assertThat(chain.ended()).isEqualTo("time");
    assertThat(happened).contains("mode: hands-in");
    assertThat(limits).hasSize(1);
    ProbeEvent.LimitChanged limit = limits.get(0);
    assertThat(limit.limit()).isEqualTo(LimitKind.RUNNING_A);
    assertThat(limit.micros() - chain.closedMicros()).isBetween(7_000_000L, 7_500_000L);
    double steady =
        Summaries.of(null, "u", chain, run.conversions(), null, false).supply().steadyA();
    // 10 ms means of a motor and a tone lie some milliampere above the mean of a second.
    assertThat(limit.value())
        .isBetween(Math.max(1.1 * steady, steady + 0.010), 1.35 * steady + 0.012);
    assertThat(limit.value()).isLessThan(larch().limits().runningA());
    assertThat(run.mode().mode()).isEqualTo(BenchMode.HANDS_IN);
    assertThat(run.mode().limitA()).isEqualTo(limit.value());
  }

  @Test
  void withHandsInTheProbeItselfTripsOnASmallSlip() throws Exception {
    // A pocket radio at 9 mA; later its output stage draws 150 mA: under the sheet's limit or not,
    // over 20 mA it is off.
    JobSheet radio = sheet(Scenarios.sheetJson("radio"));
    LiveRun run = run("radio", radio, 9_000_000L);
    run.mode(BenchMode.HANDS_IN, null, 0);
    run.run();
    assertThat(limits).hasSize(1);
    assertThat(limits.get(0).value()).as("10 mA above 9 mA").isCloseTo(0.0195, offset(0.003));
  }

  @Test
  void theDrawnInLimitStaysUntilTheSwitchOpensAndThatIsSaid() throws Exception {
    LiveRun run = run("healthy", larch(), 9_000_000L);
    run.mode(BenchMode.HANDS_IN, null, 0);
    boolean[] back = new boolean[1];
    said.clear();
    LiveRun[] self = {run};
    Chain chain =
        runWith(
            self[0],
            () -> {
              if (!back[0] && run.mode().limitA() != null) {
                back[0] = true;
                run.mode(BenchMode.USUAL, null, 0);
              }
            });
    assertThat(chain.ended()).isEqualTo("time");
    assertThat(limits).as("nothing was made wider").hasSize(1);
    assertThat(run.mode().mode()).isEqualTo(BenchMode.USUAL);
    assertThat(run.mode().words().english()).contains("until you switch off");
  }

  private Chain runWith(LiveRun run, Runnable onReading) throws Exception {
    everyMark = onReading;
    Thread poke =
        new Thread(
            () -> {
              while (!Thread.currentThread().isInterrupted()) {
                everyMark.run();
                java.util.concurrent.locks.LockSupport.parkNanos(200_000);
              }
            });
    poke.setDaemon(true);
    poke.start();
    try {
      return run.run();
    } finally {
      poke.interrupt();
      poke.join();
    }
  }

  private volatile Runnable everyMark = () -> {};

  @Test
  void soakSwitchesOffOnAnyAlarmAlsoOneThatOnlyTells() throws Exception {
    LiveRun run = run("rail-drops", fused("rail-drops"), 20_000_000L);
    run.mode(BenchMode.SOAK, null, 0);
    Chain chain = run.run();
    assertThat(alarms).isNotEmpty();
    assertThat(RuleId.of(alarms.get(0).rule()).settings(fused("rail-drops")).action())
        .as("this rule alone would not switch off")
        .isEqualTo("alarm");
    assertThat(chain.ended()).isEqualTo("rule-off");
    assertThat(chain.offBy()).isEqualTo(OffCause.RULE);
  }

  @Test
  void theSameAlarmOutsideSoakOnlyTells() throws Exception {
    LiveRun run = run("rail-drops", fused("rail-drops"), 6_000_000L);
    Chain chain = run.run();
    assertThat(alarms).isNotEmpty();
    assertThat(chain.ended()).isEqualTo("time");
  }

  @Test
  void soakEndsWithItsTime() throws Exception {
    LiveRun run = run("healthy", fused("healthy"), null);
    run.mode(BenchMode.SOAK, null, 3_000_000);
    Chain chain = run.run();
    assertThat(chain.ended()).isEqualTo("time");
    assertThat(chain.state()).isEqualTo(SwitchState.OFF);
    assertThat(chain.openedMicros() - chain.closedMicros()).isBetween(3_000_000L, 3_400_000L);
    assertThat(happened).contains("mode: soak", "mode: soak-over");
  }

  private static JobSheet fused(String scenario) {
    return sheet(Scenarios.sheetJson(scenario));
  }

  @Test
  void soakIsRefusedWithoutFuseLimitOrAWakefulComputer() {
    String set = "{\"set\":{\"name\":\"S\"},\"supply\":{\"nominalV\":12%s}}";
    assertThat(Soak.refused(sheet(set.formatted("")), null).english()).contains("fuse");
    assertThat(Soak.refused(sheet(set.formatted(",\"fuseA\":0.5")), null)).isNull();
    assertThat(
            Soak.refused(sheet(set.formatted(",\"fuseA\":0.5")), Worded.asIs("no tool for it"))
                .english())
        .contains("no tool for it");
  }

  @Test
  void aSoakRefusedWhileRunningLeavesTheModeAndSaysWhy() throws Exception {
    LiveRun run = run("healthy", fused("healthy"), 1_000_000L);
    run.mode(BenchMode.SOAK, Worded.asIs("lid closed"), 0);
    run.run();
    assertThat(run.mode().mode()).isEqualTo(BenchMode.USUAL);
    assertThat(run.mode().words().english()).contains("lid closed");
    assertThat(happened).doesNotContain("mode: soak");
  }

  @Test
  void soakAsksForSlowClimbingWhereTheSheetDoesNotAndWidensNothing() {
    JobSheet plain = sheet("{\"set\":{\"name\":\"S\"},\"supply\":{\"nominalV\":12,\"idleA\":0.1}}");
    assertThat(Soak.on(plain).rules().get("current-creep").numbers().get("overAPerMin"))
        .isEqualTo(0.002);
    JobSheet said =
        sheet(
            "{\"set\":{\"name\":\"S\"},\"supply\":{\"nominalV\":12,\"idleA\":0.1},"
                + "\"rules\":{\"current-creep\":{\"overAPerMin\":0.001}}}");
    assertThat(Soak.on(said)).isEqualTo(said);
  }

  @Test
  void fiveSecondsAreLookedAt() {
    RecentHighest recent = new RecentHighest();
    assertThat(recent.full()).isFalse();
    assertThat(recent.ampere()).isZero();
  }
}
