package firstamp.alarm;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.model.Alarm;
import firstamp.model.AlarmState;
import firstamp.model.Look;
import firstamp.model.ProbeEvent;
import firstamp.model.TripCause;
import firstamp.model.samples.Channel;
import java.util.Map;
import org.junit.jupiter.api.Test;

class FirstRulesTest {
  @Test
  void aHealthySetRaisesNothing() {
    Bench bench = new Bench(TestSheets.unit()).look(Look.Result.CLEAR, 5, 0.02).close();
    bench.ampere = 1.2;
    bench.rails[0] = 3;
    bench.run(50);
    bench.ampere = 0.2;
    bench.rails[0] = 8.2;
    bench.run(5000).open();
    assertThat(bench.engine.alarms()).isEmpty();
    assertThat(bench.actions).isEmpty();
  }

  @Test
  void aShortIsRaisedAfterItsDelayAndSwitchesOff() {
    Bench bench = new Bench(TestSheets.unit()).close().run(1000);
    bench.volts = 2.0;
    bench.ampere = 0.9;
    bench.run(90);
    assertThat(bench.raised("short")).isFalse();
    bench.run(20);
    Alarm alarm = bench.only("short");
    assertThat(alarm.sinceMs()).isEqualTo(1000);
    assertThat(alarm.atMs()).isEqualTo(1100);
    assertThat(alarm.value()).isCloseTo(2.22, org.assertj.core.data.Offset.offset(0.05));
    assertThat(alarm.limit()).isEqualTo(2.5);
    assertThat(alarm.text()).startsWith("The set draws like a short: 2.2").contains("2.5 ohm");
    assertThat(bench.actions).containsExactly("short");
  }

  @Test
  void justAboveTheOhmsIsNoShort() {
    Bench bench = new Bench(TestSheets.unit()).close().run(1000);
    bench.volts = 2.4;
    bench.ampere = 0.9;
    bench.run(500);
    assertThat(bench.raised("short")).isFalse();
  }

  @Test
  void aShortRestsWhileTheCapacitorsCharge() {
    // 3 C V / I = 3 * 2200 uF * 12 V / 1.5 A = 52.8 ms
    Bench bench = new Bench(TestSheets.unit()).close();
    bench.volts = 1;
    bench.ampere = 1.0;
    bench.run(150);
    assertThat(bench.raised("short")).isFalse();
    bench.run(20);
    assertThat(bench.only("short").sinceMs()).isEqualTo(60);
  }

  @Test
  void theTripIsRaisedAtItsOwnTimeAndItsCaptureMakesTheShort() {
    Bench bench = new Bench(TestSheets.unit(), RuleSetup.normal().withLabel("W3 went to P7"));
    bench.close().run(410);
    long opened = Bench.CLOSED + 412_300;
    bench.voltsAt(opened - 100, 9.6);
    bench.trip(opened, TripCause.RUNNING, Channel.I, 8.0, 1.0);
    bench.run(20).voltsAt(opened + 4000, 0);
    bench.capture(opened, 0.1, 8.0);
    Alarm over = bench.only("over-current");
    assertThat(over.atMs()).isEqualTo(412.3);
    assertThat(over.sinceMs()).isEqualTo(411.6);
    assertThat(over.limit()).isEqualTo(1.0);
    assertThat(over.text()).contains("(Since W3 went to P7.)");
    Alarm alarm = bench.only("short");
    assertThat(alarm.atMs()).isEqualTo(412.3);
    assertThat(alarm.value()).isCloseTo(1.2, org.assertj.core.data.Offset.offset(0.02));
    assertThat(alarm.atMost()).isFalse();
    assertThat(alarm.foldedUnder()).isEqualTo(over.number());
    assertThat(bench.actions).isEmpty();
  }

  @Test
  void aLongBlockBehindTheTripDoesNotPushItsVoltsOut() {
    Bench bench = new Bench(TestSheets.unit()).close().run(410);
    long opened = Bench.CLOSED + 412_300;
    bench.voltsAt(opened - 100, 9.6);
    bench.trip(opened, TripCause.RUNNING, Channel.I, 8.0, 1.0);
    bench.voltsFrom(opened + 2000, 1000, 0);
    bench.capture(opened, 0.1, 8.0);
    assertThat(bench.only("short").value())
        .isCloseTo(1.2, org.assertj.core.data.Offset.offset(0.02));
    assertThat(bench.only("short").atMost()).isFalse();
  }

  @Test
  void voltsFromBeforeTheCrossingGiveAnUpperBound() {
    Bench bench = new Bench(TestSheets.unit()).close().run(410);
    long opened = Bench.CLOSED + 413_900; // V came at 412.187, the crossing was at 413.2
    bench.voltsAt(opened - 1500, 11.4);
    bench.trip(opened, TripCause.RUNNING, Channel.I, 8.0, 1.0);
    bench.run(20).voltsAt(opened + 4000, 0);
    bench.capture(opened, 0.1, 8.0).run(10);
    assertThat(bench.only("short").value())
        .isCloseTo(11.4 / 8, org.assertj.core.data.Offset.offset(0.02));
    assertThat(bench.only("short").atMost()).isTrue();
    assertThat(bench.only("short").text()).contains("a short: at most ");
  }

  @Test
  void aHardShortAlwaysRaisesShortByTheLooksVolts() {
    Bench bench = new Bench(TestSheets.unit()).look(Look.Result.CLEAR, 2.1, 0.03).close().run(500);
    long opened = bench.micros() + 100;
    bench.trip(opened, TripCause.HARD_SHORT, null, 0, 0);
    bench.capture(opened, 0.1, 0.1);
    bench.run(20);
    // 2.1 V + 30 mA * 330 ohm = 12 V, over 10 A
    assertThat(bench.only("short").value())
        .isCloseTo(1.2, org.assertj.core.data.Offset.offset(0.02));
    assertThat(bench.only("short").atMost()).isTrue();
    assertThat(bench.only("over-current").value()).isEqualTo(10);
  }

  @Test
  void noDrawNeedsItsTimeAndItsLimit() {
    Bench bench = new Bench(TestSheets.unit()).close();
    bench.ampere = 0.0015;
    bench.run(500);
    assertThat(bench.raised("no-draw")).isFalse();
    bench.run(100);
    assertThat(bench.only("no-draw").atMs()).isEqualTo(600);
    Bench other = new Bench(TestSheets.unit()).close();
    other.ampere = 0.0025;
    other.run(3000);
    assertThat(other.raised("no-draw")).isFalse();
  }

  @Test
  void aRailOutsideItsWindowIsRaisedAndClearsBeyondTheDeadband() {
    Bench bench = new Bench(TestSheets.unit()).close().run(1000);
    bench.rails[0] = 7.7; // the window ends at 7.79
    bench.run(200);
    Alarm alarm = bench.only("rail-window");
    assertThat(alarm.rail()).isEqualTo(1);
    assertThat(alarm.railName()).isEqualTo("B1");
    assertThat(alarm.sinceMs()).isEqualTo(1000);
    assertThat(alarm.atMs()).isEqualTo(1100);
    assertThat(alarm.limit()).isCloseTo(7.79, org.assertj.core.data.Offset.offset(1e-9));
    bench.rails[0] = 7.85; // inside, yet within the deadband of 0.164 V
    bench.run(1000);
    assertThat(bench.only("rail-window").state()).isEqualTo(AlarmState.UNACKNOWLEDGED);
    bench.rails[0] = 8.1;
    bench.run(490);
    assertThat(bench.only("rail-window").state()).isEqualTo(AlarmState.UNACKNOWLEDGED);
    bench.run(10);
    assertThat(bench.only("rail-window").state()).isEqualTo(AlarmState.CLEARED_UNACKNOWLEDGED);
    bench.event(new ProbeEvent.Acknowledged(bench.micros(), "", 0));
    assertThat(bench.only("rail-window").state()).isEqualTo(AlarmState.CLEARED);
  }

  @Test
  void aRailThatDoesNotComeIsLate() {
    Bench bench = new Bench(TestSheets.unit()).close();
    bench.rails[0] = 4;
    bench.run(290);
    assertThat(bench.engine.alarms()).isEmpty();
    bench.run(20);
    assertThat(bench.only("rail-late").sinceMs()).isEqualTo(300);
    bench.run(300);
    assertThat(bench.only("rail-window").foldedUnder()).isEqualTo(bench.only("rail-late").number());
  }

  @Test
  void theSupplyHasAWindowFromHalfASecondOn() {
    Bench bench = new Bench(TestSheets.unit()).close();
    bench.volts = 10.9;
    bench.run(590);
    assertThat(bench.engine.alarms()).isEmpty();
    bench.run(10);
    assertThat(bench.only("rail-window").railName()).isEqualTo("supply");
    assertThat(bench.only("rail-window").rail()).isZero();
  }

  @Test
  void theHeadIsRaisedWhenItFallsBehindTheMeter() {
    Bench bench = new Bench(TestSheets.unit()).close().run(1700);
    for (int k = 0; k < 3; k++) {
      bench.run(200).levels(1e-4, 0.1, 0.9); // 60 dB below, limit 44
    }
    assertThat(bench.raised("head-below-meter")).isFalse();
    bench.run(200).levels(1e-4, 0.1, 0.9);
    Alarm alarm = bench.only("head-below-meter");
    assertThat(alarm.value()).isCloseTo(60, org.assertj.core.data.Offset.offset(0.01));
    assertThat(alarm.limit()).isEqualTo(44);
    Bench well = new Bench(TestSheets.unit()).close().run(1700);
    for (int k = 0; k < 20; k++) {
      well.run(200).levels(7e-4, 0.1, 0.9); // 43.1 dB
    }
    assertThat(well.raised("head-below-meter")).isFalse();
  }

  @Test
  void aQuietMeterIsSaid() {
    Bench bench = new Bench(TestSheets.unit()).close().run(1700);
    for (int k = 0; k < 20; k++) {
      bench.run(200).levels(1e-6, 1e-3, 0.1);
    }
    assertThat(bench.engine.watched()).doesNotContain("head-below-meter");
    assertThat(bench.engine.notWatched())
        .anySatisfy(one -> assertThat(one.why()).contains("I cannot see your meter"));
  }

  @Test
  void silenceAndAFullDiskAreRaisedAndClear() {
    Bench bench = new Bench(TestSheets.unit()).close().run(100);
    bench.event(
        new ProbeEvent.LinkChanged(bench.micros() + 500_000, ProbeEvent.LinkState.LOST, "gone"));
    assertThat(bench.only("probe-silent").atMs()).isEqualTo(600);
    assertThat(bench.only("probe-silent").sinceMs()).isEqualTo(100);
    bench.run(10);
    assertThat(bench.only("probe-silent").state()).isEqualTo(AlarmState.CLEARED_UNACKNOWLEDGED);
    bench.event(new ProbeEvent.LogChanged(bench.micros(), false, "disk full"));
    assertThat(bench.only("not-logging").text()).contains("is not being written. Disk full.");
    bench.event(new ProbeEvent.LogChanged(bench.micros(), true, null));
    assertThat(bench.only("not-logging").state()).isEqualTo(AlarmState.CLEARED_UNACKNOWLEDGED);
  }

  @Test
  void theLookRaisesWhatItFound() {
    Bench bench = new Bench(TestSheets.unit()).look(Look.Result.SHORT, 0.06, 0.036);
    Alarm alarm = bench.only("short");
    assertThat(alarm.atMs()).isEqualTo(300);
    assertThat(alarm.value()).isCloseTo(1.6, org.assertj.core.data.Offset.offset(0.1));
    assertThat(bench.actions).isEmpty();
    assertThat(new Bench(TestSheets.unit()).look(Look.Result.NO_SUPPLY, 1, 0).raised("no-draw"))
        .isTrue();
    assertThat(
            new Bench(TestSheets.unit()).look(Look.Result.REVERSED, 0, 0).raised("wrong-polarity"))
        .isTrue();
    assertThat(
            new Bench(TestSheets.unit()).look(Look.Result.TOO_HIGH, 15, 0).raised("over-voltage"))
        .isTrue();
  }

  @Test
  void afterOpeningNothingAboutSupplyAndRailsIsRaisedAndWhatStandsFreezes() {
    Bench bench = new Bench(TestSheets.unit()).close().run(1000);
    bench.rails[0] = 7;
    bench.run(200);
    bench.open();
    bench.rails[0] = 6.5;
    bench.volts = 0;
    bench.ampere = 0;
    bench.run(2000);
    assertThat(bench.engine.alarms()).hasSize(1);
    assertThat(bench.only("rail-window").state()).isEqualTo(AlarmState.UNACKNOWLEDGED);
    bench.event(new ProbeEvent.Acknowledged(bench.micros(), "rail-window", 1));
    assertThat(bench.only("rail-window").state()).isEqualTo(AlarmState.ACKNOWLEDGED);
  }

  @Test
  void aChangedLimitChangesTheTimes() {
    Bench bench =
        new Bench(TestSheets.with("no-draw", Map.of("belowA", 0.15, "afterMs", 200.0))).close();
    bench.run(400);
    assertThat(bench.only("no-draw").atMs()).isEqualTo(300);
  }

  @Test
  void anOpenClipIsNotWatchedAndSaid() {
    Bench bench = new Bench(TestSheets.unit()).close();
    bench.rails[0] = Double.NaN;
    bench.run(2000);
    assertThat(bench.engine.alarms()).isEmpty();
    assertThat(bench.engine.watched()).doesNotContain("rail-window 1");
    assertThat(bench.engine.notWatched())
        .contains(new firstamp.model.NotWatched("rail 1", "no clip"));
  }
}
