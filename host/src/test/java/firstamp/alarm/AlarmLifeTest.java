package firstamp.alarm;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.model.Alarm;
import firstamp.model.AlarmState;
import firstamp.model.JobSheet;
import firstamp.model.ProbeEvent;
import firstamp.model.RuleId;
import firstamp.model.TripCause;
import firstamp.model.samples.Channel;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/**
 * States and transitions of ANSI/ISA-18.2-2016 and IEC 62682 (as quoted on a library's
 * documentation pages and by OPC UA Part 9, 4.8: second hand; acknowledge after the return and
 * return after acknowledge partly from memory).
 */
class AlarmLifeTest {
  private static JobSheet ripple(double limitV, JobSheet.RuleSettings settings) {
    JobSheet unit = TestSheets.unit();
    return new JobSheet(
        1,
        unit.set(),
        unit.supply(),
        unit.limits(),
        List.of(new JobSheet.Rail(1, "B1", 8.2, 5.0, 300.0, null, limitV, null, "none")),
        null,
        Map.of("ripple", settings));
  }

  private static JobSheet.RuleSettings settings(double deadbandPercent, boolean latch) {
    return new JobSheet.RuleSettings(null, 0.0, 0.0, deadbandPercent, latch, "low", null, Map.of());
  }

  private static Bench bench(double limit, double deadbandPercent, boolean latch) {
    return new Bench(ripple(limit, settings(deadbandPercent, latch))).close().run(1000);
  }

  private static Bench seen(Bench bench, double value) {
    return bench.run(200).ripple(8.2, value);
  }

  private static Bench acknowledge(Bench bench) {
    return bench.event(new ProbeEvent.Acknowledged(bench.micros(), "ripple", 1));
  }

  private static AlarmState state(Bench bench) {
    return bench.only("ripple").state();
  }

  @Test
  void goesNormalUnacknowledgedAcknowledgedNormal() {
    Bench bench = seen(bench(100, 2, false), 101);
    assertThat(state(bench)).isEqualTo(AlarmState.UNACKNOWLEDGED);
    assertThat(state(acknowledge(bench))).isEqualTo(AlarmState.ACKNOWLEDGED);
    assertThat(state(seen(bench, 90))).isEqualTo(AlarmState.CLEARED);
    assertThat(bench.transitions)
        .extracting(Alarm::state)
        .containsExactly(AlarmState.UNACKNOWLEDGED, AlarmState.ACKNOWLEDGED, AlarmState.CLEARED);
    assertThat(bench.transitions)
        .extracting(Alarm::changedMs)
        .containsExactly(1200.0, 1200.0, 1400.0);
  }

  @Test
  void goesNormalUnacknowledgedReturnedNormal() {
    Bench bench = seen(seen(bench(100, 2, false), 101), 90);
    assertThat(state(bench)).isEqualTo(AlarmState.CLEARED_UNACKNOWLEDGED);
    assertThat(state(acknowledge(bench))).isEqualTo(AlarmState.CLEARED);
    seen(bench, 101);
    assertThat(bench.engine.alarms()).hasSize(2);
    assertThat(bench.engine.alarms().get(1).state()).isEqualTo(AlarmState.UNACKNOWLEDGED);
    assertThat(bench.engine.alarms().get(1).number()).isEqualTo(2);
  }

  /** OPC UA Part 9, 4.8: a latched alarm stays until an explicit reset, after the value is back. */
  @Test
  void aLatchHoldsUntilItIsSeenAfterTheReturn() {
    Bench bench = seen(seen(bench(100, 2, true), 101), 90);
    assertThat(state(bench)).isEqualTo(AlarmState.UNACKNOWLEDGED);
    assertThat(state(acknowledge(bench))).isEqualTo(AlarmState.CLEARED);
    seen(bench, 101);
    assertThat(bench.engine.alarms()).hasSize(2);
    Bench early = acknowledge(seen(bench(100, 2, true), 101));
    seen(early, 90);
    assertThat(state(early)).isEqualTo(AlarmState.ACKNOWLEDGED);
    assertThat(state(acknowledge(early))).isEqualTo(AlarmState.CLEARED);
  }

  /** Limit 100, deadband 2: clears below 98, not at 98.0 (worked from OPC UA Part 9, B.1.5). */
  @Test
  void clearsOnlyBeyondTheDeadband() {
    Bench bench = seen(bench(100, 2, false), 100);
    assertThat(bench.engine.alarms()).isEmpty();
    seen(bench, 100.1);
    assertThat(state(seen(bench, 99))).isEqualTo(AlarmState.UNACKNOWLEDGED);
    assertThat(state(seen(bench, 98.0))).isEqualTo(AlarmState.UNACKNOWLEDGED);
    assertThat(state(seen(bench, 97.9))).isEqualTo(AlarmState.CLEARED_UNACKNOWLEDGED);
  }

  /**
   * Limits 100 and 85, deadband 5: at 94 the upper alarm goes, the lower stays (vendor example).
   */
  @Test
  void oneValueBetweenTwoLimitsClearsTheUpperOnly() {
    Bench upper = seen(seen(bench(100, 5, false), 101), 94);
    Bench lower = seen(seen(bench(85, 100 * 5 / 85.0, false), 101), 94);
    assertThat(state(upper)).isEqualTo(AlarmState.CLEARED_UNACKNOWLEDGED);
    assertThat(state(lower)).isEqualTo(AlarmState.UNACKNOWLEDGED);
  }

  @Test
  void theOnDelayMustHoldWithoutABreakAndTheOffDelayBridgesShortReturns() {
    JobSheet.RuleSettings delayed =
        new JobSheet.RuleSettings(null, 600.0, 600.0, 2.0, false, "low", null, Map.of());
    Bench bench = new Bench(ripple(100, delayed)).close().run(1000);
    seen(seen(bench, 101), 101);
    seen(seen(seen(bench, 99), 101), 101);
    assertThat(bench.engine.alarms()).isEmpty();
    seen(bench, 101);
    assertThat(bench.only("ripple").sinceMs()).isEqualTo(1600);
    assertThat(bench.only("ripple").atMs()).isEqualTo(2200);
    seen(seen(seen(bench, 90), 90), 101);
    assertThat(state(seen(seen(bench, 90), 90))).isEqualTo(AlarmState.UNACKNOWLEDGED);
    assertThat(state(seen(bench, 90))).isEqualTo(AlarmState.CLEARED_UNACKNOWLEDGED);
  }

  @Test
  void aRuleThatIsOffIsNotRaisedAndSaid() {
    JobSheet.RuleSettings off =
        new JobSheet.RuleSettings(false, null, null, null, null, null, null, Map.of());
    Bench bench = new Bench(ripple(100, off)).close().run(1000);
    seen(bench, 200);
    assertThat(bench.engine.alarms()).isEmpty();
    assertThat(bench.engine.notWatched())
        .contains(new firstamp.model.NotWatched("ripple 1", "turned off on the sheet"));
  }

  @Test
  void actionAndPriorityAreThoseOfTheSheet() {
    JobSheet.RuleSettings off =
        new JobSheet.RuleSettings(null, 0.0, null, null, null, "high", "off", Map.of());
    Bench bench = new Bench(ripple(100, off)).close().run(1000);
    seen(bench, 200);
    assertThat(bench.actions).containsExactly("ripple");
    assertThat(bench.only("ripple").priority().id()).isEqualTo("high");
  }

  @Test
  void theFirstDeviationInTimeIsOnTopAlsoWhenItWasRaisedLater() {
    JobSheet.RuleSettings slow =
        new JobSheet.RuleSettings(null, 600.0, null, null, null, null, null, Map.of());
    Bench bench = new Bench(ripple(100, slow)).close().run(1000);
    seen(bench, 101); // begins at 1000
    bench.rails[0] = 6; // begins at 1200, raised at 1300
    seen(seen(bench, 101), 101);
    Alarm window = bench.only("rail-window");
    Alarm ripple = bench.only("ripple");
    assertThat(ripple.foldedUnder()).isZero();
    assertThat(window.foldedUnder()).isEqualTo(ripple.number());
  }

  @Test
  void aShortOnAFullSetShowsOneCauseOnTop() {
    Bench bench = new Bench(TestSheets.unit()).close().run(1000);
    bench.volts = 1;
    bench.ampere = 1.5;
    bench.rails[0] = 0.5;
    bench.run(150);
    bench.trip(bench.micros(), TripCause.RUNNING, Channel.I, 1.5, 1);
    bench.capture(bench.micros(), 1.5, 1.5).run(600);
    assertThat(bench.engine.alarms().size()).isGreaterThan(2);
    assertThat(bench.engine.alarms()).filteredOn(alarm -> alarm.foldedUnder() == 0).hasSize(1);
  }

  @Test
  void everyRuleHasTheThreePriorities() {
    for (RuleId rule : RuleId.values()) {
      assertThat(rule.settings(TestSheets.unit()).priority()).isIn("high", "medium", "low");
    }
  }
}
