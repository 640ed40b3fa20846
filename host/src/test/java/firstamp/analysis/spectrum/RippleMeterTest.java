package firstamp.analysis.spectrum;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import firstamp.analysis.Sheets;
import firstamp.analysis.SignalFeed;
import firstamp.analysis.figures.RippleSums;
import firstamp.model.samples.RippleWindow;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RippleMeterTest {
  private final List<RippleWindow> windows = new ArrayList<>();
  private final SignalFeed feed = new SignalFeed().noise(0.7, 5);

  private void run(int conversions, int... rails) {
    firstamp.model.JobSheet.Rail[] on = new firstamp.model.JobSheet.Rail[rails.length];
    for (int k = 0; k < rails.length; k++) {
      on[k] = Sheets.rail(rails[k], 8.2);
    }
    new RippleMeter(Sheets.sheet(null, on), feed.calibration(), windows::add)
        .accept(feed.block(0, conversions));
  }

  @ParameterizedTest
  @CsvSource({"50, 100", "60, 120", "50, 50", "60, 60"})
  void findsTheToneAndTheMains(int mainsHz, int toneHz) {
    feed.rail(2, t -> 8.2 + SignalFeed.sine(0.3, toneHz).applyAsDouble(t));
    run(3200, 2);
    RippleWindow window = windows.get(0);
    assertThat(window.rail()).isEqualTo(2);
    assertThat(window.mainsHz()).isEqualTo(mainsHz);
    assertThat(toneHz == mainsHz ? window.rms1V() : window.rms2V()).isCloseTo(0.3, within(0.004));
    assertThat(toneHz == mainsHz ? window.rms2V() : window.rms1V()).isLessThan(0.02);
    assertThat(window.meanV()).isCloseTo(8.2, within(0.005));
    assertThat(window.rmsV()).isGreaterThan(window.noiseFloorV());
  }

  @Test
  void takesTheNoiseOffASmallRipple() {
    // 14 mV is a third of a step of 39 mV: the noise of the converter carries it.
    feed.rail(1, t -> 8.2 + SignalFeed.sine(0.014, 100).applyAsDouble(t));
    run(3200 * 50, 1);
    RippleSums sums = new RippleSums();
    windows.forEach(sums::add);
    assertThat(sums.mean().rmsV()).isCloseTo(0.014, within(0.002));
    assertThat(sums.mean().strongestHz()).isEqualTo(100);
  }

  @Test
  void dcAloneHasNoRipple() {
    feed.noise(0, 1).rail(1, t -> 8.2).rail(3, t -> -9);
    run(3200, 1, 3);
    assertThat(windows).extracting(RippleWindow::rmsV).containsExactly(0.0, 0.0);
    RippleSums sums = new RippleSums();
    sums.add(windows.get(0));
    assertThat(sums.mean()).isNull();
    assertThat(windows.get(1).meanV()).isCloseTo(-9, within(0.02));
  }

  /** 10 V a second, which a spectrum without the line taken off shows as 0.3 V of 50 Hz and up. */
  @Test
  void aRisingRailIsNoRipple() {
    feed.noise(0.7, 5).rail(1, t -> 4 + 10 * t);
    run(3200 * 5, 1);
    RippleSums sums = new RippleSums();
    for (RippleWindow window : windows) {
      sums.add(window);
      assertThat(window.meanV()).isCloseTo(5 + 2 * windows.indexOf(window), within(0.02));
    }
    assertThat(windows).hasSize(5);
    assertThat(sums.mean()).isNull();
    // The same slope with 20 mV of ripple on it: that, and nothing of the slope.
    windows.clear();
    feed.rail(1, t -> 4 + 10 * t + SignalFeed.sine(0.02, 100).applyAsDouble(t));
    run(3200 * 5, 1);
    RippleSums with = new RippleSums();
    windows.forEach(with::add);
    assertThat(with.mean().rmsV()).isCloseTo(0.02, within(0.004));
    assertThat(with.mean().strongestHz()).isEqualTo(100);
  }

  @Test
  void motorNoiseBesideTheLinesIsNoRipple() {
    feed.rail(1, t -> 8.2 + SignalFeed.sine(0.3, 137).applyAsDouble(t));
    run(3200, 1);
    // The foot of the window passes some of what is 13 Hz beside a line.
    assertThat(windows.get(0).rmsV()).isLessThan(0.05);
  }

  @Test
  void keepsThreeRailsApart() {
    feed.rail(1, SignalFeed.sine(0.1, 100))
        .rail(2, SignalFeed.sine(0.2, 100))
        .rail(3, SignalFeed.sine(0.4, 120));
    run(3200, 1, 2, 3);
    assertThat(windows).extracting(RippleWindow::rail).containsExactly(1, 2, 3);
    assertThat(windows.get(0).rmsV()).isCloseTo(0.1, within(0.005));
    assertThat(windows.get(1).rmsV()).isCloseTo(0.2, within(0.005));
    assertThat(windows.get(2).rmsV()).isCloseTo(0.4, within(0.005));
    assertThat(windows.get(2).mainsHz()).isEqualTo(60);
  }
}
