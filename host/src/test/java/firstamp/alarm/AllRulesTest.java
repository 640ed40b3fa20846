package firstamp.alarm;

import static firstamp.alarm.SettledBench.settled;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import firstamp.model.Alarm;
import firstamp.model.AlarmState;
import firstamp.model.JobSheet;
import firstamp.model.NotWatched;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Rules on the supply current and the set as a whole, each on both sides of its limit. */
class AllRulesTest {
  @Test
  void yourSupplyIsLimitingWhenTheVoltsCollapseOnAPlateau() {
    Bench bench = settled();
    bench.volts = 8; // under 0.7 x 12 V, at 5.3 ohm no short by ohms
    bench.ampere = 1.5;
    bench.run(300);
    assertThat(bench.only("short").text()).startsWith("Your supply is in current limit: 8");
    assertThat(bench.only("short").limit()).isNull();
    Bench weak = settled();
    weak.volts = 8;
    weak.ampere = 1.1; // far from what the supply gives
    weak.run(300);
    assertThat(weak.raised("short")).isFalse();
    Bench moving = settled();
    moving.volts = 8;
    for (int k = 0; k < 30; k++) {
      moving.ampere = k % 2 == 0 ? 1.3 : 1.5;
      moving.run(10);
    }
    assertThat(moving.raised("short")).isFalse();
  }

  @Test
  void aLampInLineMayPullTheVoltsDown() {
    JobSheet.Supply lamp =
        new JobSheet.Supply(
            "bench", "supply-lead", 12.0, 5.0, 13.0, 1.5, 1.0, true, "lamp", null, null, null);
    Bench bench = settled(TestSheets.replacing(lamp, null));
    bench.volts = 6;
    bench.ampere = 1.45;
    bench.rails[0] = 4;
    bench.run(500);
    assertThat(bench.raised("short")).isFalse();
    assertThat(bench.raised("rail-window")).isFalse();
    assertThat(bench.engine.notWatched())
        .contains(new NotWatched("rail-window 1", "a lamp is in line"));
  }

  @Test
  void aMotorIsNamedBeforeAShort() {
    JobSheet unit = TestSheets.unit();
    JobSheet motor =
        new JobSheet(
            1,
            new JobSheet.SetInfo("Set", "recorder", "negative", true, null),
            unit.supply(),
            unit.limits(),
            unit.rails(),
            null,
            unit.rules());
    Bench bench = settled(motor);
    bench.volts = 8;
    bench.ampere = 1.5;
    bench.run(300);
    assertThat(bench.only("short").text()).contains("The motor may be stalling under the limit.");
  }

  private static Bench creeping(double amperePerMinute, double seconds) {
    Bench bench =
        new Bench(TestSheets.with("current-creep", Map.of("overAPerMin", 0.05))).close().run(5000);
    for (int k = 0; k < seconds * 100; k++) {
      bench.ampere = 0.1 + amperePerMinute * k / 6000;
      bench.run(10);
    }
    return bench;
  }

  @Test
  void aSteadyClimbIsCreepOnlyAboveItsLimit() {
    assertThat(creeping(0.045, 20).raised("current-creep")).isFalse();
    Bench bench = creeping(0.055, 20);
    Alarm alarm = bench.only("current-creep");
    assertThat(alarm.value()).isCloseTo(0.055, within(0.001));
    assertThat(alarm.unit()).isEqualTo("A/min");
    assertThat(alarm.atMs()).isEqualTo(15_000);
    assertThat(alarm.sinceMs()).isEqualTo(5_000);
    bench.run(20_000);
    assertThat(bench.only("current-creep").state()).isEqualTo(AlarmState.CLEARED_UNACKNOWLEDGED);
  }

  @Test
  void aStepIsNoCreep() {
    Bench bench =
        new Bench(TestSheets.with("current-creep", Map.of("overAPerMin", 0.05))).close().run(9000);
    bench.ampere = 0.15;
    bench.run(20_000);
    assertThat(bench.raised("current-creep")).isFalse();
    assertThat(bench.engine.alarms()).isEmpty();
  }

  @Test
  void pulsedCurrentIsJudgedOnATenthOfASecond() {
    JobSheet sheet = TestSheets.replacing(TestSheets.supply("bench", "before-reservoir"), null);
    Bench bench = new Bench(sheet).close();
    for (int k = 0; k < 300; k++) {
      bench.ampere = k % 10 == 0 ? 0.03 : 0; // 3 mA in the mean, 0 in nine readings of ten
      bench.run(10);
    }
    assertThat(bench.raised("no-draw")).isFalse();
  }

  /** A rail cannot come up while nothing flows: that comes first, the rail is folded under it. */
  @Test
  void aSetThatDrawsNothingIsNamedBeforeItsMissingRail() {
    Bench bench = new Bench(TestSheets.unit());
    bench.ampere = 0;
    bench.rails[0] = 0;
    bench.close().run(590);
    assertThat(bench.engine.alarms()).isEmpty();
    bench.run(500);
    assertThat(bench.engine.alarms().get(0).rule()).isEqualTo("no-draw");
    assertThat(bench.only("no-draw").sinceMs()).isZero();
    assertThat(bench.only("rail-late").foldedUnder()).isEqualTo(1);
  }

  /** The plateau is seen at its end and began a tenth of a second before: it comes first. */
  @Test
  void aSupplyThatLimitsIsNamedBeforeTheRailsThatFollow() {
    Bench bench = settled();
    bench.ampere = 1.5;
    bench.volts = 8;
    bench.rails[0] = 5;
    bench.run(100);
    assertThat(bench.engine.alarms().get(0).rule()).isEqualTo("short");
    assertThat(bench.only("short").sinceMs()).isEqualTo(2000);
    assertThat(bench.only("short").atMs()).isEqualTo(2100);
  }

  @Test
  void whatNeverCameToBeJudgedStandsInNotWatched() {
    Map<String, JobSheet.RuleSettings> rules =
        Map.of("current-creep", TestSheets.settings(Map.of("overAPerMin", 0.05)));
    Bench bench = new Bench(TestSheets.with(rules)).close().run(200);
    assertThat(bench.engine.watched())
        .contains("over-voltage 1", "clip-off 1")
        .doesNotContain("current-creep", "rail-window 1", "ripple 1");
    assertThat(bench.engine.notWatched())
        .contains(
            new NotWatched("current-creep", "the set was not on long enough"),
            new NotWatched("rail-late 1", "the set was not on long enough"));
    bench.run(20_000);
    assertThat(bench.engine.watched()).contains("current-creep", "rail-window 1");
  }

  @Test
  void watchedAndNotWatchedTogetherNameEveryRule() {
    Bench bench = settled();
    List<String> said = new java.util.ArrayList<>(bench.engine.watched());
    bench.engine.notWatched().forEach(one -> said.add(one.what()));
    for (firstamp.model.RuleId rule : firstamp.model.RuleId.values()) {
      if (rule != firstamp.model.RuleId.OUTPUT_OFFSET) { // asked for by its input alone
        assertThat(said).anySatisfy(one -> assertThat(one).startsWith(rule.id()));
      }
    }
    assertThat(bench.engine.watched()).contains("over-current", "rail-window 1", "rail-window 0");
  }
}
