package firstamp.alarm;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import firstamp.model.Alarm;
import firstamp.model.AlarmState;
import firstamp.model.Happening;
import firstamp.model.JobSheet;
import firstamp.model.LimitKind;
import firstamp.model.Look;
import firstamp.model.NotWatched;
import firstamp.model.ProbeEvent;
import firstamp.model.TripCause;
import firstamp.model.samples.Channel;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The remaining rules, each on both sides of its limit. */
class AllRulesTest {
  private static Bench settled() {
    return settled(TestSheets.unit());
  }

  private static Bench settled(JobSheet sheet) {
    return new Bench(sheet).close().run(2000);
  }

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

  /** Back and forth every 20 ms: the reading means swing by what is given. */
  private static Bench wobbling(double volts) {
    Bench bench = settled();
    for (int k = 0; k < 100; k++) {
      bench.rails[0] = 8.2 + (k % 4 < 2 ? -volts / 2 : volts / 2);
      bench.run(10);
    }
    return bench;
  }

  @Test
  void aRailThatSwingsByMoreThanATenthIsUnsteady() {
    assertThat(wobbling(0.75).raised("rail-unsteady")).isFalse(); // 10 % is 0.82 V
    assertThat(wobbling(0.9).only("rail-unsteady").value()).isCloseTo(0.9, within(0.02));
  }

  @Test
  void rippleIsJudgedAfterSettling() {
    Bench early = new Bench(TestSheets.unit()).close().run(250);
    early.ripple(8.2, 0.5).run(20);
    assertThat(early.engine.alarms()).isEmpty();
    Bench bench = settled();
    for (int k = 0; k < 10; k++) {
      bench.run(200).ripple(8.2, 0.049);
    }
    assertThat(bench.raised("ripple")).isFalse();
    for (int k = 0; k < 3; k++) {
      bench.run(200).ripple(8.2, 0.051);
    }
    assertThat(bench.only("ripple").value()).isEqualTo(0.051);
    assertThat(bench.only("ripple").sinceMs()).isEqualTo(4000);
    assertThat(bench.only("ripple").atMs()).isEqualTo(4600);
  }

  /**
   * Full-wave at 50 Hz: I / (pi 100 C sqrt 2). 24 V example of the textbook approximation: 100 mA,
   * 470 uF: fundamental peak 0.6773 V (Vpp / pi), 0.479 V rms; here 100 mA and 2200 uF: 0.102 V.
   */
  @Test
  void aHighRailWithHardlyAnyRippleHasLostItsLoad() {
    Bench bench = settled();
    bench.rails[0] = 9.0; // window ends at 8.61
    for (int k = 0; k < 4; k++) {
      bench.run(200).ripple(9.0, 0.0315);
    }
    assertThat(bench.raised("ripple-too-low")).isFalse(); // limit 0.3 x 0.1023 = 0.0307
    for (int k = 0; k < 4; k++) {
      bench.run(200).ripple(9.0, 0.0295);
    }
    assertThat(bench.only("ripple-too-low").limit()).isCloseTo(0.0307, within(0.0002));
    Bench inside = settled();
    for (int k = 0; k < 10; k++) {
      inside.run(200).ripple(8.4, 0.001);
    }
    assertThat(inside.raised("ripple-too-low")).isFalse();
  }

  @Test
  void overVoltageSwitchesOffAndTheTripNamesItsRail() {
    Bench bench = settled();
    bench.rails[0] = 9.7;
    bench.run(200);
    assertThat(bench.raised("over-voltage")).isFalse();
    bench.rails[0] = 9.9;
    bench.run(50);
    assertThat(bench.only("over-voltage").railName()).isEqualTo("B1");
    assertThat(bench.actions).containsExactly("over-voltage");
    Bench tripped = settled();
    long opened = tripped.micros() + 2000;
    tripped.trip(opened, TripCause.OVER_VOLTAGE, Channel.R1, 11, 9.8);
    assertThat(tripped.only("over-voltage").atMs()).isEqualTo(2002);
    assertThat(tripped.only("over-voltage").sinceMs()).isEqualTo(2001.3);
    assertThat(tripped.only("over-voltage").rail()).isEqualTo(1);
    assertThat(tripped.only("over-voltage").limit()).isEqualTo(9.8);
    Bench supply = settled();
    supply.trip(supply.micros(), TripCause.OVER_VOLTAGE, Channel.V, 14, 13);
    assertThat(supply.only("over-voltage").railName()).isEqualTo("supply");
  }

  @Test
  void aLimitThatIsMovedWhileOnHoldsFromThenOn() {
    Bench rail = settled();
    rail.rails[0] = 8.5;
    rail.run(200);
    assertThat(rail.raised("over-voltage")).isFalse();
    rail.event(new ProbeEvent.LimitChanged(rail.micros(), LimitKind.RAIL_OVER_V, 1, 8.4)).run(50);
    assertThat(rail.only("over-voltage").limit()).isEqualTo(8.4);
    assertThat(rail.actions).containsExactly("over-voltage");
    Bench supply = settled();
    supply.volts = 12.6;
    supply.run(200);
    assertThat(supply.raised("over-voltage")).isFalse();
    supply.event(new ProbeEvent.LimitChanged(supply.micros(), LimitKind.SUPPLY_MAX_V, 0, 12.4));
    supply.run(200);
    assertThat(supply.only("over-voltage").limit()).isEqualTo(12.4);
    assertThat(supply.only("rail-window").limit()).isEqualTo(12.4);
  }

  @Test
  void aTripAtTheEndOfTheRangePointsToTheClip() {
    Bench bench = settled();
    bench.trip(bench.micros(), TripCause.OVER_VOLTAGE, Channel.R1, 19.97, 9.8);
    assertThat(bench.only("over-voltage").text()).contains("Look at the clip first");
  }

  @Test
  void theWrongSideOfTheChassisIsHalfAVolt() {
    Bench bench = settled();
    bench.rails[0] = -0.45;
    bench.run(100);
    assertThat(bench.raised("wrong-polarity")).isFalse();
    bench.rails[0] = -0.6;
    bench.run(20);
    assertThat(bench.only("wrong-polarity").value()).isCloseTo(-0.6, within(0.02));
    assertThat(bench.actions).containsExactly("wrong-polarity");
  }

  @Test
  void aRailThatFallsWhileTheSupplyStandsStillDoesNotFollow() {
    Bench bench = settled();
    for (int k = 0; k < 60; k++) {
      bench.rails[0] = 8.2 - 1.5 * Math.min(1, k / 50.0); // 18 %
      bench.run(10);
    }
    assertThat(bench.raised("rail-not-following")).isFalse();
    for (int k = 0; k < 40; k++) {
      bench.rails[0] = 6.7 - 0.4 * Math.min(1, k / 10.0); // 23 % within the second
      bench.run(10);
    }
    assertThat(bench.only("rail-not-following").limit()).isCloseTo(1.64, within(1e-9));
    Bench together = settled();
    for (int k = 0; k < 100; k++) {
      together.rails[0] = 8.2 - 2.5 * k / 100;
      together.volts = 12 - 0.9 * k / 100;
      together.run(10);
    }
    assertThat(together.raised("rail-not-following")).isFalse();
  }

  @Test
  void aRailMustNotClimbAfterTheSwitchOpened() {
    Bench bench = settled().open();
    bench.ampere = 0;
    bench.volts = 0;
    bench.rails[0] = 3;
    bench.run(500);
    bench.rails[0] = 3.9;
    bench.run(500);
    assertThat(bench.engine.alarms()).isEmpty();
    bench.rails[0] = 4.2;
    bench.run(210);
    assertThat(bench.only("rail-climbing").value()).isCloseTo(1.2, within(0.01));
    assertThat(bench.only("rail-climbing").sinceMs()).isEqualTo(3000);
  }

  @Test
  void anOutputOffsetIsWatchedOnItsInput() {
    JobSheet sheet = TestSheets.with("output-offset", Map.of("input", 3.0));
    Bench bench = new Bench(sheet);
    bench.rails[2] = 3; // the thump of the start
    bench.close().run(1500);
    bench.rails[2] = -0.09;
    bench.run(1000);
    assertThat(bench.raised("output-offset")).isFalse();
    bench.rails[2] = -0.12;
    bench.run(300);
    assertThat(bench.only("output-offset").rail()).isEqualTo(3);
    assertThat(bench.only("output-offset").limit()).isEqualTo(-0.1);
    assertThat(bench.engine.watched()).contains("output-offset 3");
  }

  @Test
  void humIsJudgedWhileTheMeterShowsNoSpeech() {
    JobSheet sheet = TestSheets.with("hum", Map.of("aboveDbv", -80.0));
    Bench bench = settled(sheet);
    for (int k = 0; k < 10; k++) {
      bench.run(200).levels(9.9e-4, 0.001, 0); // hum 9.9e-5 V = -80.09 dBV, meter quiet
    }
    assertThat(bench.raised("hum")).isFalse();
    for (int k = 0; k < 10; k++) {
      bench.run(200).levels(1.02e-3, 0.1, 0.2); // speech
    }
    assertThat(bench.raised("hum")).isFalse();
    for (int k = 0; k < 5; k++) {
      bench.run(200).levels(1.02e-3, 0.001, 0); // -79.8 dBV
    }
    assertThat(bench.only("hum").value()).isCloseTo(-79.8, within(0.1));
  }

  @Test
  void readingsAloneCannotTellTonesAndThatIsSaid() {
    RuleSetup reduced = new RuleSetup(null, false, true, 330, 10);
    Bench bench = new Bench(TestSheets.with("hum", Map.of("aboveDbv", -80.0)), reduced);
    bench.close().run(2000);
    for (int k = 0; k < 10; k++) {
      bench.run(200).levels(1, 0.001, 0).ripple(8.2, 1);
    }
    assertThat(bench.engine.alarms()).isEmpty();
    assertThat(bench.engine.notWatched())
        .contains(
            new NotWatched("hum", "only readings come from the probe"),
            new NotWatched("ripple 1", "only readings come from the probe"));
  }

  @Test
  void withoutExpectedDecibelsTheNeedleAndTheWordRecordDecide() {
    JobSheet.Levels levels = new JobSheet.Levels(null, 10.0, null, 6.0, -30.0, 1500.0);
    JobSheet sheet = TestSheets.replacing(TestSheets.unit().supply(), levels);
    Bench bench = settled(sheet);
    for (int k = 0; k < 8; k++) {
      bench.run(200).levels(4e-5, 0.1, 0.3); // 4 uA in 10 ohm, and nothing said about record
    }
    assertThat(bench.raised("head-below-meter")).isFalse();
    bench.event(new ProbeEvent.Marked(bench.micros(), "Record on"));
    for (int k = 0; k < 5; k++) {
      bench.run(200).levels(4e-5, 0.1, 0.3);
    }
    assertThat(bench.raised("head-below-meter")).as("a mark is a note").isFalse();
    bench.event(
        new ProbeEvent.Happened(bench.micros(), new Happening.Recording(Happening.RecordState.ON)));
    for (int k = 0; k < 8; k++) {
      bench.run(200).levels(6e-5, 0.1, 0.3); // 6 uA
    }
    assertThat(bench.raised("head-below-meter")).isFalse();
    for (int k = 0; k < 5; k++) {
      bench.run(200).levels(4e-5, 0.1, 0.3);
    }
    assertThat(bench.only("head-below-meter").value()).isCloseTo(4, within(1e-9));
  }

  @Test
  void aClippedInputIsSaidAndTheFineRangeNever() {
    Bench bench = settled();
    bench.ampere = 0.9; // far over the fine range
    bench.run(500);
    assertThat(bench.raised("input-clipped")).isFalse();
    bench.rails[0] = -25;
    bench.run(100);
    assertThat(bench.only("input-clipped").text()).contains("B1 is off scale");
  }

  @Test
  void aRailThatIsGoneAtOnceIsItsClipIfTheCurrentStays() {
    Bench bench = settled();
    bench.rails[0] = Double.NaN;
    bench.run(100);
    assertThat(bench.only("clip-off").text()).contains("Look at clip 1 first.");
    assertThat(bench.engine.alarms()).hasSize(1);
    bench.rails[0] = 8.2;
    bench.run(300);
    assertThat(bench.only("clip-off").state()).isEqualTo(AlarmState.CLEARED_UNACKNOWLEDGED);
    Bench loaded = settled();
    loaded.rails[0] = 0;
    loaded.ampere = 0.3;
    loaded.run(200);
    assertThat(loaded.raised("clip-off")).isFalse();
    assertThat(loaded.raised("rail-window")).isTrue();
  }

  @Test
  void currentAfterTheSwitchOpenedMeansItFailed() {
    Bench bench = settled().open();
    bench.rails[0] = 0;
    bench.ampere = 0.0045;
    bench.run(1000);
    assertThat(bench.raised("switch-failed")).isFalse();
    bench.ampere = 0.0055;
    bench.run(210);
    assertThat(bench.only("switch-failed").text()).contains("Unplug the supply.");
    assertThat(bench.actions).containsExactly("switch-failed");
    Bench before = new Bench(TestSheets.unit()).look(Look.Result.CURRENT_WHILE_OFF, 0, 0);
    assertThat(before.only("switch-failed").text()).contains("although the switch is open");
    Bench stays = new Bench(TestSheets.unit()).look(Look.Result.VOLTS_STAY, 5, 0);
    assertThat(stays.only("switch-failed").text()).startsWith("Volts stay on the set");
  }

  @Test
  void aPlugInTheWallIsSaidWithEveryOff() {
    JobSheet sheet =
        TestSheets.replacing(TestSheets.supply("mains-transformer", "before-reservoir"), null);
    Bench bench = settled(sheet);
    bench.trip(bench.micros(), TripCause.MEAN, null, 0, 0);
    assertThat(bench.only("over-current").text())
        .endsWith("The mains side is still live. Pull the plug. The reservoir is still charged.");
    Bench fed =
        settled(
            TestSheets.replacing(TestSheets.supply("mains-transformer", "reservoir-fed"), null));
    fed.trip(fed.micros(), TripCause.RUNNING, Channel.I, 2, 1);
    assertThat(fed.only("over-current").text()).doesNotContain("plug");
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

  @ParameterizedTest
  @CsvSource({
    "INRUSH, 5.0, 4.5, Inrush current too high",
    "RUNNING, 2.0, 1.0, Too much current",
    "PEAK, 5.0, 1.0, Too much current"
  })
  void everyTripByCurrentIsOverCurrent(TripCause cause, double value, double limit, String text) {
    Bench bench = settled();
    bench.trip(bench.micros(), cause, Channel.I, value, limit);
    assertThat(bench.only("over-current").text()).startsWith(text);
    assertThat(bench.only("over-current").value()).isCloseTo(value, within(0.007));
  }

  @Test
  void aTripReportedThreeTimesIsOneAlarm() {
    Bench bench = settled();
    long opened = bench.micros();
    for (int k = 0; k < 3; k++) {
      bench.trip(opened, TripCause.RUNNING, Channel.I, 2, 1);
    }
    assertThat(bench.engine.alarms()).hasSize(1);
  }

  @Test
  void withoutItsCaptureATripIsJudgedByWhatItToldItself() {
    Bench bench = settled();
    bench.trip(bench.micros(), TripCause.RUNNING, Channel.I, 8, 1);
    bench.run(520);
    assertThat(bench.only("short").atMost()).isTrue();
    assertThat(bench.only("short").value()).isCloseTo(1.5, within(0.01)); // 12 V over 8 A
    Bench ended = settled();
    ended.trip(ended.micros(), TripCause.RUNNING, Channel.I, 8, 1);
    ended.event(new ProbeEvent.RunEnded(ended.micros(), "trip"));
    assertThat(ended.raised("short")).isTrue();
    Bench mild = settled();
    mild.trip(mild.micros(), TripCause.RUNNING, Channel.I, 2, 1); // 6 ohm
    mild.run(600);
    assertThat(mild.raised("short")).isFalse();
  }

  @Test
  void silenceOfTheHostIsATripWithoutAnAlarmAboutTheSet() {
    Bench bench = settled();
    bench.trip(bench.micros(), TripCause.HOST_SILENCE, null, 0, 0);
    bench.ampere = 0;
    bench.run(600);
    assertThat(bench.engine.alarms()).isEmpty();
  }

  /** A rail cannot come up while nothing flows: that is said first, the rail is folded under it. */
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

  /** A high rail that has lost its ripple has lost its load: that is said first. */
  @Test
  void tooLittleRippleIsNamedBeforeTheWindowItLeft() {
    Bench bench = settled();
    bench.rails[0] = 9.0;
    for (int k = 0; k < 6; k++) {
      bench.run(200).ripple(9.0, 0.001);
    }
    assertThat(bench.engine.alarms())
        .extracting(Alarm::rule)
        .containsExactly("ripple-too-low", "rail-window");
    assertThat(bench.only("rail-window").foldedUnder()).isEqualTo(1);
    Bench loaded = settled();
    loaded.rails[0] = 9.0;
    loaded.run(200).ripple(9.0, 0.1).run(110);
    assertThat(loaded.only("rail-window").atMs()).isLessThanOrEqualTo(2320);
  }

  /** The fall began where the rail still stood, not where it had gone a fifth. */
  @Test
  void aRailThatBreaksDownIsNamedFromTheBeginOfItsFall() {
    Bench bench = settled();
    for (int k = 1; k <= 20; k++) {
      bench.rails[0] = 8.2 - 0.3 * k;
      bench.run(10);
    }
    assertThat(bench.only("rail-not-following").sinceMs()).isBetween(1990.0, 2010.0);
    assertThat(bench.engine.alarms())
        .filteredOn(alarm -> alarm.foldedUnder() == 0)
        .extracting(Alarm::rule)
        .containsExactly("rail-not-following");
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
