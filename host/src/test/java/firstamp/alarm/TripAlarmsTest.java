package firstamp.alarm;

import static firstamp.alarm.SettledBench.settled;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import firstamp.model.JobSheet;
import firstamp.model.LimitKind;
import firstamp.model.Look;
import firstamp.model.ProbeEvent;
import firstamp.model.TripCause;
import firstamp.model.samples.Channel;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The alarms that a trip or an opened switch raises, and what they name. */
final class TripAlarmsTest {
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
  void currentAfterTheSwitchOpenedMeansItFailed() {
    Bench bench = settled().open();
    bench.rails[0] = 0;
    bench.volts = 0;
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
    bench.volts = 0;
    bench.run(600);
    assertThat(bench.engine.alarms()).isEmpty();
  }
}
