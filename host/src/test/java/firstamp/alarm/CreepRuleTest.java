package firstamp.alarm;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import firstamp.model.Alarm;
import firstamp.model.Happening;
import firstamp.model.ProbeEvent;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

/** A sheet that says nothing of a climbing current: a quarter of it and 5 mA a minute. */
class CreepRuleTest {
  private static final String CREEP = "current-creep";

  /** Readings of a current over seconds since it was closed. */
  private static Bench drawing(double seconds, DoubleUnaryOperator ampere) {
    Bench bench = new Bench(TestSheets.unit()).close();
    for (int k = 0; k < seconds * 100; k++) {
      bench.ampere = ampere.applyAsDouble(k / 100.0);
      bench.run(10);
    }
    return bench;
  }

  /** 100 mA: 25 and 5 mA a minute. */
  @Test
  void aQuarterOfTheSettledCurrentAndFiveMilliamperesAMinuteIsTheLimit() {
    assertThat(drawing(30, t -> 0.1 + 0.027 * t / 60).raised(CREEP)).isFalse();
    Bench bench = drawing(30, t -> 0.1 + 0.034 * t / 60);
    Alarm alarm = bench.only(CREEP);
    assertThat(alarm.value()).isCloseTo(0.034, within(0.001));
    assertThat(alarm.limit()).isCloseTo(0.03, within(0.0005));
    assertThat(alarm.unit()).isEqualTo("A/min");
  }

  /** It doubles every 2 s: the last fifth holds more than half of the rise and is no step. */
  @Test
  void aRiseThatGetsFasterIsACreep() {
    Bench bench = drawing(16, t -> 0.1 + 0.001 * Math.pow(2, Math.max(0, t - 5) / 2));
    assertThat(bench.raised(CREEP)).isTrue();
  }

  @Test
  void aLoadThatComesOnIsNone() {
    assertThat(drawing(40, t -> t < 12 ? 0.05 : 0.2).raised(CREEP)).isFalse();
    assertThat(drawing(40, t -> t < 14.7 ? 0.05 : 0.4).raised(CREEP)).isFalse();
  }

  /** 10 mA more each second would be 600 mA a minute; between two words the current is at rest. */
  @Test
  void musicThatSwellsIsNone() {
    Bench bench =
        drawing(
            60, t -> 0.05 + 0.15 * (1 - Math.cos(t * 0.3)) * (Math.floor(t * 4) % 3 == 0 ? 0 : 1));
    assertThat(bench.raised(CREEP)).isFalse();
  }

  /** In 2 s from 50 to 160 mA, and no higher: too short for a climb of 10 s. */
  @Test
  void threeTimesTheSettledCurrentIsRaisedAfterFiveSeconds() {
    DoubleUnaryOperator grows = t -> 0.05 + 0.055 * Math.max(0, Math.min(2, t - 8));
    assertThat(drawing(14.5, grows).raised(CREEP)).isFalse();
    Alarm alarm = drawing(20, grows).only(CREEP);
    assertThat(alarm.unit()).isEqualTo("A");
    assertThat(alarm.limit()).isCloseTo(0.15, within(0.001));
    assertThat(alarm.atMs()).isBetween(14_500.0, 16_500.0);
    assertThat(alarm.text()).contains("160 mA", "50 mA");
  }

  /** The person turns the supply up: the current follows the volts. */
  @Test
  void aSupplyThatIsTurnedUpExplainsTheRise() {
    Bench bench = new Bench(TestSheets.unit()).close();
    for (int k = 0; k < 2500; k++) {
      bench.volts = 11.2 + 1.4 * Math.min(1, k / 2500.0);
      bench.ampere = 0.05 * bench.volts / 6;
      bench.run(10);
    }
    assertThat(bench.raised(CREEP)).isFalse();
  }

  /** Volts that sag under the load explain nothing. */
  @Test
  void aSupplyThatSagsUnderTheRiseDoesNot() {
    Bench bench = new Bench(TestSheets.unit()).close();
    for (int k = 0; k < 2000; k++) {
      bench.ampere = 0.1 + 0.2 * k / 2000;
      bench.volts = 12 - 3 * (bench.ampere - 0.1);
      bench.run(10);
    }
    assertThat(bench.raised(CREEP)).isTrue();
  }

  /** What the person did explains the result. */
  @Test
  void whatWasChangedStartsItAnew() {
    assertThat(changed(false).raised(CREEP)).isTrue();
    assertThat(changed(true).raised(CREEP)).isFalse();
  }

  private static Bench changed(boolean told) {
    Bench bench = new Bench(TestSheets.unit()).close().run(8000);
    for (int k = 0; k < 2000; k++) {
      if (told && k == 200) {
        bench.engine.onEvent(
            new ProbeEvent.Happened(
                bench.micros(), new Happening.Recording(Happening.RecordState.ON)));
      }
      bench.ampere = 0.1 + 0.125 * Math.min(2, k / 100.0);
      bench.run(10);
    }
    return bench;
  }
}
