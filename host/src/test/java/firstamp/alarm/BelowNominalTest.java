package firstamp.alarm;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.model.JobSheet;
import firstamp.model.limits.Through;
import org.junit.jupiter.api.Test;

/** A supply that a hand turns up: low volts are no fault, a collapse and a short are. */
class BelowNominalTest {
  private static JobSheet turned(Double limitA) {
    return TestSheets.replacing(
        new JobSheet.Supply(
            "bench",
            "supply-lead",
            12.0,
            11.0,
            13.0,
            limitA,
            1.0,
            true,
            "variable-transformer",
            null,
            null,
            null),
        null);
  }

  /** From 3 V to 12 V, the rail in proportion. */
  private static Bench turnedUp(JobSheet sheet, double toV, double seconds) {
    Bench bench = new Bench(sheet).close();
    for (int k = 0; k < seconds * 100; k++) {
      bench.volts = 3 + (toV - 3) * Math.min(1, k / 500.0);
      bench.ampere = 0.1 * bench.volts / 12;
      bench.rails[0] = 8.2 * bench.volts / 12;
      bench.run(10);
    }
    return bench;
  }

  @Test
  void turnedUpToNominalNothingIsRaised() {
    assertThat(turnedUp(turned(1.5), 12, 12).engine.alarms()).isEmpty();
    assertThat(turnedUp(turned(null), 7, 12).engine.alarms()).isEmpty();
  }

  @Test
  void oncePutToNominalARailThatIsLowIsRaised() {
    Bench bench = turnedUp(turned(1.5), 12, 8);
    bench.rails[0] = 7;
    assertThat(bench.run(1000).raised("rail-window")).isTrue();
  }

  @Test
  void tooMuchIsTooMuchForAHandToo() {
    Bench bench = turnedUp(turned(1.5), 12, 8);
    bench.volts = 14;
    assertThat(bench.run(500).raised("over-voltage")).isTrue();
  }

  /** 0.5 V at 1 A. */
  @Test
  void aShortAtLowVoltsIsAShort() {
    Bench bench = turnedUp(turned(1.5), 5, 4);
    bench.volts = 0.5;
    bench.ampere = 1;
    assertThat(bench.run(300).raised("short")).isTrue();
  }

  @Test
  void aCollapseToTheLimitOfTheSupplyIsItsLimitAndTurnedDownIsNone() {
    Bench bench = turnedUp(turned(1.5), 9, 8);
    bench.volts = 5;
    bench.ampere = 1.45;
    assertThat(bench.run(400).only("short").text()).contains("current limit");
    Bench down = turnedUp(turned(1.5), 9, 8);
    down.volts = 4;
    down.ampere = 0.03;
    assertThat(down.run(400).raised("short")).isFalse();
  }

  /** 2 V, or a tenth of nominal; else three tenths. */
  @Test
  void theFirstLookSeesFromTwoVoltsOn() {
    assertThat(Through.of(turned(null)).lookFromV(12)).isEqualTo(2);
    assertThat(Through.HAND_TURNED.lookFromV(40)).isEqualTo(4);
    assertThat(Through.HAND_TURNED.lookFromV(1.5)).isEqualTo(1.5);
    assertThat(Through.of(TestSheets.unit()).lookFromV(10)).isEqualTo(3);
  }
}
