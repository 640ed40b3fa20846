package firstamp.alarm;

import static firstamp.alarm.SettledBench.settled;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import firstamp.model.Alarm;
import firstamp.model.AlarmState;
import org.junit.jupiter.api.Test;

/** Rules on the rails, each on both sides of its limit. */
final class RailRulesTest {
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

  /** A high rail that has lost its ripple has lost its load: that comes first. */
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
}
