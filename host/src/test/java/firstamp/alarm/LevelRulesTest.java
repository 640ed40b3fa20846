package firstamp.alarm;

import static firstamp.alarm.SettledBench.settled;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import firstamp.model.Happening;
import firstamp.model.JobSheet;
import firstamp.model.NotWatched;
import firstamp.model.ProbeEvent;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Rules on the levels at head and meter, each on both sides of its limit. */
final class LevelRulesTest {
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
}
