package firstamp.alarm;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.model.JobSheet;
import firstamp.model.TripCause;
import firstamp.model.samples.Calibration;
import firstamp.model.samples.Channel;
import firstamp.model.samples.ConversionBlock;
import firstamp.model.samples.SamplePlan;
import java.util.Arrays;
import org.junit.jupiter.api.Test;

/** What a trip says of the limit that acted, and of a motor that may have started. */
class ActingLimitTest {
  private static JobSheet recorder(Boolean motor) {
    JobSheet unit = TestSheets.unit();
    return new JobSheet(
        1,
        new JobSheet.SetInfo("S", "recorder", "negative", motor, null),
        unit.supply(),
        unit.limits(),
        unit.rails(),
        null,
        unit.rules());
  }

  private static Bench settled(JobSheet sheet) {
    return new Bench(sheet).close().run(2000);
  }

  /** I at one value for a time, in whole plans, and 12 V; nothing else is looked at. */
  private static void current(Bench bench, long fromMicros, double ms, double ampere) {
    long first = Math.floorDiv(SamplePlan.indexAt(fromMicros), 32) * 32;
    short[] counts = new short[32 * (int) Math.round(ms / 2)];
    Arrays.fill(counts, (short) 0);
    for (int k = 0; k < counts.length; k++) {
      if (SamplePlan.channelAt(first + k) == Channel.I) {
        counts[k] = (short) Math.round(Calibration.nominal().scale(Channel.I).counts(ampere));
      } else if (SamplePlan.channelAt(first + k) == Channel.V) {
        counts[k] = (short) Math.round(Calibration.nominal().scale(Channel.V).counts(12));
      }
    }
    bench.engine.onConversions(new ConversionBlock(first, counts));
  }

  /** 80 counts of 12.207 mA are 0.977 A; 81 would be 0.989 A. */
  @Test
  void namesTheLimitThatActedBesideTheSheets() {
    Bench bench = settled(recorder(null));
    bench.trip(bench.micros(), TripCause.RUNNING, Channel.I, 0.998, 0.977);
    assertThat(bench.only("over-current").text())
        .startsWith(
            "Too much current: 1 A when the limit of 0.977 A (1 A on the sheet) was crossed. The"
                + " supply was switched off.");
    assertThat(bench.only("over-current").limit()).as("as stated").isEqualTo(1);
  }

  /** 250 counts of 39.06 mV are 9.766 V. */
  @Test
  void namesTheActingVoltsBesideTheSheets() {
    Bench bench = settled(recorder(null));
    bench.trip(bench.micros(), TripCause.OVER_VOLTAGE, Channel.R1, 9.805, 9.766);
    assertThat(bench.only("over-voltage").text())
        .contains("the limit is 9.77 V, on the sheet 9.8 V.");
  }

  @Test
  void aMotorsStartIsToldToBeOne() {
    Bench bench = settled(recorder(true));
    long now = bench.micros();
    current(bench, now, 10, 0.1);
    current(bench, now + 10_000, 14, 0.8);
    bench.trip(now + 22_700, TripCause.RUNNING, Channel.I, 1.2, 0.977);
    bench.engine.finish();
    assertThat(bench.only("over-current").text())
        .contains("was crossed, 12 ms after a load came on. The supply")
        .contains("If the motor started then, its starting current is above the running limit");
  }

  @Test
  void aMotorThatRunsFromTheStartIsCountedFromClosing() {
    Bench bench = new Bench(recorder(true)).close();
    long closed = bench.micros();
    current(bench, closed, 70, 1.2);
    bench.trip(closed + 60_700, TripCause.RUNNING, Channel.I, 1.2, 0.977);
    bench.engine.finish();
    assertThat(bench.only("over-current").text()).contains("crossed, 60 ms after closing.");
  }

  @Test
  void aSetWithoutAMotorIsNotAskedForOne() {
    for (Boolean motor : new Boolean[] {null, false}) {
      Bench bench = settled(recorder(motor));
      long now = bench.micros();
      current(bench, now, 10, 0.1);
      current(bench, now + 10_000, 14, 0.8);
      bench.trip(now + 22_700, TripCause.RUNNING, Channel.I, 1.2, 0.977);
      assertThat(bench.only("over-current").text()).doesNotContain("motor");
    }
  }

  /** A short 1.1 s after the motor came on is not its start. */
  @Test
  void whatComesLaterThanAMotorsStartIsNotToldToBeOne() {
    Bench bench = settled(recorder(true));
    long now = bench.micros();
    current(bench, now, 10, 0.1);
    current(bench, now + 10_000, 300, 0.8);
    current(bench, now + 310_000, 900, 0.1);
    bench.trip(now + 1_110_700, TripCause.RUNNING, Channel.I, 5, 0.977);
    assertThat(bench.only("over-current").text()).doesNotContain("motor").doesNotContain("load");
  }

  /** The record of the current shows a short: then a motor is not mentioned, not even first. */
  @Test
  void aShortIsNotToldToBeAMotorsStart() {
    Bench bench = settled(recorder(true));
    long now = bench.micros();
    current(bench, now, 10, 0.1);
    current(bench, now + 10_000, 14, 0.8);
    bench.trip(now + 22_700, TripCause.RUNNING, Channel.I, 1.2, 0.977);
    assertThat(bench.engine.alarms()).as("not before it is known").isEmpty();
    bench.capture(now + 22_700, 0.1, 12);
    bench.engine.finish();
    assertThat(bench.only("over-current").text()).doesNotContain("motor");
    assertThat(bench.only("short").foldedUnder()).isEqualTo(1);
  }
}
