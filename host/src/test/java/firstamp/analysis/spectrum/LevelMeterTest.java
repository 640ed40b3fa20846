package firstamp.analysis.spectrum;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import firstamp.analysis.Sheets;
import firstamp.analysis.SignalFeed;
import firstamp.model.samples.Channel;
import firstamp.model.samples.ConversionBlock;
import firstamp.model.samples.LevelWindow;
import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class LevelMeterTest {
  private static final DoubleUnaryOperator SILENCE = t -> 0;

  private final List<LevelWindow> windows = new ArrayList<>();
  private final SignalFeed feed =
      new SignalFeed().with(Channel.H, SILENCE).with(Channel.M, SILENCE).noise(0.7, 3);

  private LevelMeter meter(Double toneHz) {
    return new LevelMeter(Sheets.sheet(Sheets.levels(toneHz)), feed.calibration(), windows::add);
  }

  private static DoubleUnaryOperator sum(DoubleUnaryOperator a, DoubleUnaryOperator b) {
    return t -> a.applyAsDouble(t) + b.applyAsDouble(t);
  }

  @ParameterizedTest
  @ValueSource(doubles = {398, 400, 402.2})
  void readsAToneThatIsNearTheOneOnTheSheet(double hz) {
    feed.with(Channel.H, SignalFeed.sine(1.23e-3, hz)).with(Channel.M, SignalFeed.sine(0.126, hz));
    meter(400.0).accept(feed.block(0, 3200));
    LevelWindow window = windows.get(0);
    assertThat(Decibels.ratio(window.headToneV(), 1.23e-3)).isCloseTo(0, within(0.05));
    assertThat(Decibels.ratio(window.meterToneV(), 0.126)).isCloseTo(0, within(0.05));
    assertThat(window.toneShare()).isGreaterThan(0.99);
    assertThat(window.headClipped()).isFalse();
    assertThat(window.meterClipped()).isFalse();
  }

  @ParameterizedTest
  @ValueSource(ints = {50, 60})
  void tellsHumFromToneAndFindsTheMains(int mainsHz) {
    // Check: 1 V at 400 Hz with 10 mV at 100 Hz is -40 dB, worked out from the definition.
    DoubleUnaryOperator hum =
        sum(SignalFeed.sine(80e-6, mainsHz), SignalFeed.sine(60e-6, 3 * mainsHz));
    feed.with(Channel.H, sum(SignalFeed.sine(2e-3, 400), hum))
        .with(Channel.M, SignalFeed.sine(0.2, 400));
    meter(400.0).accept(feed.block(0, 3200));
    LevelWindow window = windows.get(0);
    assertThat(window.humHz()).isEqualTo(mainsHz);
    assertThat(Decibels.ratio(window.headHumV(), 100e-6)).isCloseTo(0, within(0.4));
    assertThat(window.headHumEvenV()).isLessThan(0.2 * window.headHumOddV());
    assertThat(Decibels.ratio(window.headToneV(), 2e-3)).isCloseTo(0, within(0.05));
  }

  @Test
  void bandEndsBelow30AndAbove1600Hz() {
    feed.noise(0, 1)
        .with(Channel.H, sum(SignalFeed.sine(3e-3, 15), SignalFeed.sine(3e-3, 1700)))
        .with(Channel.M, sum(SignalFeed.sine(0.3, 1000), t -> 0.7));
    meter(400.0).accept(feed.block(0, 3200));
    LevelWindow window = windows.get(0);
    assertThat(window.headRmsV()).isLessThan(20e-6);
    assertThat(window.meterRmsV()).isCloseTo(0.3, within(0.002));
    assertThat(window.meterDcV()).isCloseTo(0.7, within(0.003));
    assertThat(window.toneShare()).isLessThan(1e-3);
  }

  @Test
  void silenceStaysUnderTheStatedNoiseFloor() {
    meter(400.0).accept(feed.block(0, 3200));
    LevelWindow window = windows.get(0);
    assertThat(window.headRmsV())
        .isBetween(0.8 * window.headNoiseFloorV(), 1.15 * window.headNoiseFloorV());
    assertThat(window.headToneV()).isLessThan(0.3 * window.headNoiseFloorV());
    // 0.757 counts of 19.53 uV, 315 of 400 bins.
    assertThat(window.headNoiseFloorV()).isCloseTo(13.1e-6, within(0.1e-6));
  }

  @Test
  void saysWhenAnInputIsAtTheEndOfItsRange() {
    feed.with(Channel.H, SignalFeed.sine(9e-3, 400)).with(Channel.M, SignalFeed.sine(0.1, 400));
    meter(400.0).accept(feed.block(0, 3200));
    assertThat(windows.get(0).headClipped()).isTrue();
    assertThat(windows.get(0).meterClipped()).isFalse();
  }

  @Test
  void withoutAToneOnTheSheetThereIsNone() {
    feed.with(Channel.M, SignalFeed.sine(0.1, 400));
    meter(null).accept(feed.block(0, 3200));
    assertThat(windows.get(0).headToneV()).isNull();
    assertThat(windows.get(0).toneShare()).isZero();
    assertThat(windows.get(0).meterRmsV()).isCloseTo(0.1, within(0.001));
  }

  @Test
  void startsOnMultiplesOf3200AndLeavesOutAWindowWithAGap() {
    LevelMeter meter = meter(400.0);
    meter.accept(feed.block(1000, 2200));
    meter.accept(feed.block(3200, 3200));
    meter.accept(feed.block(6400, 1000));
    meter.accept(feed.block(7401, 1999));
    meter.accept(feed.block(9400, 3400));
    assertThat(windows).extracting(LevelWindow::firstIndex).containsExactly(3200L, 9600L);
    assertThat(windows).extracting(LevelWindow::endIndex).containsExactly(6400L, 12800L);
  }

  @Test
  void doesNotDependOnHowTheStreamIsCut() {
    feed.with(Channel.H, SignalFeed.sine(1e-3, 400)).with(Channel.M, SignalFeed.sine(0.1, 400));
    ConversionBlock whole = feed.block(0, 6400);
    meter(400.0).accept(whole);
    List<LevelWindow> expected = List.copyOf(windows);
    windows.clear();
    LevelMeter meter = meter(400.0);
    int at = 0;
    for (int length = 1; at < 6400; length = length * 3 % 251 + 1) {
      int run = Math.min(length, 6400 - at);
      meter.accept(at, whole.counts(), at, run);
      at += run;
    }
    assertThat(windows).hasSize(2).isEqualTo(expected);
  }
}
