package firstamp.analysis.figures;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import firstamp.analysis.Sheets;
import firstamp.analysis.SignalFeed;
import firstamp.analysis.spectrum.Decibels;
import firstamp.analysis.spectrum.LevelMeter;
import firstamp.analysis.spectrum.RippleMeter;
import firstamp.model.JobSheet;
import firstamp.model.OffCause;
import firstamp.model.ProbeEvent;
import firstamp.model.Summary;
import firstamp.model.SwitchState;
import firstamp.model.Trip;
import firstamp.model.TripCause;
import firstamp.model.samples.Channel;
import firstamp.model.samples.ConversionBlock;
import firstamp.model.samples.ReadingReducer;
import firstamp.model.samples.SamplePlan;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The figures of a power-up from drawn signals, and where a figure is left out. */
class PowerUpFiguresTest {
  private static final long SECOND = SamplePlan.CONVERSIONS_PER_SECOND;

  private final SignalFeed feed = new SignalFeed().noise(0.7, 11);
  private final JobSheet sheet =
      Sheets.sheet(Sheets.levels(400.0), Sheets.rail(1, 8.2), Sheets.rail(3, -9));
  private final PowerUpFigures figures = new PowerUpFigures(sheet, feed.calibration(), 330, 10);
  private final ReadingReducer reducer = new ReadingReducer(figures::onReading);
  private final LevelMeter levels =
      new LevelMeter(sheet, feed.calibration(), figures::onLevels, figures::onDetail);
  private final RippleMeter ripple =
      new RippleMeter(sheet, feed.calibration(), figures::onRipple, figures::onRailLines);

  /** A set that charges 2200 uF through 6.5 ohm and then draws 118 mA; the switch closes at 0. */
  private void healthy() {
    feed.amps(t -> 1.84 * Math.exp(-t / 0.0143) + 0.118)
        .with(Channel.V, t -> 11.98)
        .rail(1, t -> 8.21 * (1 - Math.exp(-t / 0.096)) + ripple(t))
        .rail(2, t -> 0)
        .rail(3, t -> -9.02 * (1 - Math.exp(-t / 0.004)))
        .with(Channel.H, SignalFeed.sine(1.23e-3, 400))
        .with(Channel.M, SignalFeed.sine(0.126, 400));
  }

  private static double ripple(double t) {
    return SignalFeed.sine(0.05, 100).applyAsDouble(t);
  }

  private void run(long fromIndex, long toIndex) {
    for (long at = fromIndex; at < toIndex; at += 128) {
      give(feed.block(at, (int) Math.min(128, toIndex - at)));
    }
  }

  private void give(ConversionBlock block) {
    figures.accept(block);
    reducer.accept(block.firstIndex(), block.counts(), 0, block.counts().length);
    levels.accept(block);
    ripple.accept(block);
  }

  private void close() {
    figures.onEvent(new ProbeEvent.SwitchChanged(0, SwitchState.ON, OffCause.USER));
  }

  private void open(double ms) {
    figures.onEvent(
        new ProbeEvent.SwitchChanged(Math.round(ms * 1000), SwitchState.OFF, OffCause.TIME));
  }

  @Test
  void givesAllFiguresOfAHealthyPowerUp() {
    healthy();
    close();
    run(0, 6 * SECOND);
    open(6000);

    assertThat(figures.onMs()).isEqualTo(6000);
    Summary.SupplyFigures supply = figures.supply();
    // Truth from the course itself: peak 1.958 A; integrals of 1.84 exp(-t/14.3 ms) + 0.118 A.
    assertThat(supply.inrushPeakA()).isCloseTo(1.958, within(0.03));
    double i2t = 1.84 * 1.84 * 0.0143 / 2 + 2 * 1.84 * 0.118 * 0.0143 + 0.118 * 0.118 * 0.1;
    assertThat(supply.inrushI2tA2s()).isCloseTo(i2t, within(0.02 * i2t));
    assertThat(supply.chargeC()).isCloseTo(1.84 * 0.0143 + 0.118, within(0.002));
    assertThat(supply.steadyA()).isCloseTo(0.118, within(0.0003));
    // Never calibrated: 5 %, with half a count of 0.39 mA for the zero.
    assertThat(supply.steadyAPlusMinus()).isCloseTo(0.0059, within(0.0002));
    assertThat(supply.steadyV()).isCloseTo(11.98, within(0.01));
    assertThat(supply.steadyVPlusMinus()).isCloseTo(0.6, within(0.01));

    Summary.RailFigures b1 = figures.rails().get(0);
    assertThat(b1.finalV()).isCloseTo(8.21, within(0.01));
    // tau ln(1/share): 2 % 375.6 ms, 5 % 287.6 ms, 10 % 221.0 ms; readings end on 10 ms.
    assertThat(b1.settledMs()).isBetween(360.0, 390.0);
    assertThat(b1.settled5Ms()).isBetween(280.0, 300.0);
    assertThat(b1.settled10Ms()).isBetween(220.0, 230.0);
    assertThat(b1.settled1Ms()).isGreaterThan(b1.settledMs());
    assertThat(b1.tauMs()).isCloseTo(96, within(1.0));
    assertThat(b1.rippleVrms()).isCloseTo(0.05, within(0.002));
    assertThat(b1.rippleHz()).isEqualTo(100);

    Summary.RailFigures b3 = figures.rails().get(1);
    assertThat(b3.rail()).isEqualTo(3);
    assertThat(b3.finalV()).isCloseTo(-9.02, within(0.01));
    assertThat(b3.tauMs()).isCloseTo(4, within(0.2));
    assertThat(b3.settledMs()).isBetween(10.0, 30.0);
    assertThat(b3.rippleVrms()).isNull();

    Summary.LevelFigures heard = figures.levels();
    assertThat(heard.toneHz()).isEqualTo(400);
    assertThat(heard.headDbv()).isCloseTo(-58.2, within(0.05));
    assertThat(heard.headUa()).isCloseTo(123, within(0.6));
    assertThat(heard.meterDbv()).isCloseTo(-17.99, within(0.05));
    assertThat(heard.headBelowMeterDb()).isCloseTo(40.2, within(0.1));
    assertThat(heard.expectedDb()).isEqualTo(38);
    assertThat(heard.humDbv()).isNull();
  }

  @Test
  void sameFiguresAgainFromTheSameStream() {
    healthy();
    ConversionBlock all = feed.block(0, (int) (3 * SECOND));
    close();
    give(all);
    open(2950);
    PowerUpFigures second = new PowerUpFigures(sheet, feed.calibration(), 330, 10);
    LevelMeter secondLevels = new LevelMeter(sheet, feed.calibration(), second::onLevels);
    RippleMeter secondRipple = new RippleMeter(sheet, feed.calibration(), second::onRipple);
    ReadingReducer secondReducer = new ReadingReducer(second::onReading);
    second.onEvent(new ProbeEvent.SwitchChanged(0, SwitchState.ON, OffCause.USER));
    second.accept(all);
    // Windows first, and the end told before the last readings: the order of arrival may differ.
    secondLevels.accept(all);
    secondRipple.accept(all);
    second.onEvent(new ProbeEvent.SwitchChanged(2_950_000, SwitchState.OFF, OffCause.TIME));
    secondReducer.accept(0, all.counts(), 0, all.counts().length);
    assertThat(second.supply()).isEqualTo(figures.supply());
    assertThat(second.rails()).isEqualTo(figures.rails());
    assertThat(second.levels()).isEqualTo(figures.levels());
  }

  @ParameterizedTest
  @ValueSource(longs = {0, 8, 29})
  void whatFollowsTheOpeningChangesNothing(long secondsAfter) {
    feed.amps(t -> t < 3 ? 0.118 : 0)
        .with(Channel.V, t -> t < 3 ? 12 : 12 * Math.exp(-(t - 3) / 0.2))
        .rail(1, t -> t < 3 ? 8.2 : 8.2 * Math.exp(-(t - 3) / 0.2))
        .rail(3, t -> -9)
        .with(Channel.H, t -> 0)
        .with(Channel.M, t -> 0);
    close();
    run(0, 3 * SECOND + 1600);
    open(3000);
    run(3 * SECOND + 1600, (3 + secondsAfter) * SECOND + 1600);
    assertThat(figures.onMs()).isEqualTo(3000);
    assertThat(figures.supply().steadyA()).isCloseTo(0.118, within(0.0005));
    assertThat(figures.rails().get(0).finalV()).isCloseTo(8.2, within(0.01));
    assertThat(figures.rails().get(0).settledMs()).isZero();
  }

  @Test
  void aTripBeforeASecondLeavesSteadyFiguresOut() {
    feed.amps(t -> t < 0.4 ? 0.118 : t < 0.4123 ? 8.1 : 0)
        .with(Channel.V, t -> 12)
        .rail(1, t -> 8.2)
        .rail(3, t -> -9);
    close();
    figures.onEvent(
        new ProbeEvent.Tripped(
            412_300,
            new Trip(
                1, TripCause.RUNNING, 0, 3, 400_000, 412_200, 412_300, 660, 82, 0, 0, null, null)));
    run(0, SECOND);
    assertThat(figures.onMs()).isEqualTo(412.3);
    Summary.SupplyFigures supply = figures.supply();
    assertThat(supply.steadyA()).isNull();
    assertThat(supply.steadyV()).isNull();
    assertThat(supply.inrushPeakA()).isCloseTo(0.118, within(0.04));
    // 0.118 A for 400 ms and 8.1 A for 12.3 ms.
    assertThat(supply.chargeC()).isCloseTo(0.0472 + 0.0996, within(0.003));
    assertThat(figures.rails().get(0).finalV()).isNull();
    assertThat(figures.rails().get(0).settledMs()).isNull();
    assertThat(figures.levels()).isNull();
  }

  @Test
  void aGapInTheFirstSecondLeavesTheIntegralsOut() {
    healthy();
    close();
    run(0, 8000);
    run(8128, 3 * SECOND);
    open(3000);
    assertThat(figures.supply().inrushPeakA()).isNotNull();
    assertThat(figures.supply().chargeC()).isNull();
    assertThat(figures.supply().steadyA()).isNotNull();
    assertThat(figures.rails().get(0).tauMs()).isNull();
  }

  @Test
  void anOpenClipGivesNoRailFigures() {
    healthy();
    feed.rail(1, t -> 30);
    close();
    run(0, 2 * SECOND);
    assertThat(figures.rails().get(0).finalV()).isNull();
    assertThat(figures.rails().get(1).finalV()).isNotNull();
  }

  @Test
  void aSilentHeadIsHeldToItsNoiseFloor() {
    healthy();
    feed.noise(0, 1).with(Channel.H, t -> 0);
    close();
    run(0, 3 * SECOND);
    // 13.1 uV of band noise, 5 of 315 bins: 1.65 uV or -115.6 dBV.
    assertThat(figures.levels().headDbv()).isCloseTo(-115.6, within(0.1));
    assertThat(figures.levels().headBelowMeterDb()).isCloseTo(97.6, within(0.2));
  }

  @Test
  void speechIsComparedByRmsAndHumWaitsForAPause() {
    healthy();
    feed.with(Channel.M, t -> t < 2 ? SignalFeed.sine(0.2, 730).applyAsDouble(t) : 0)
        .with(
            Channel.H,
            t ->
                t < 2
                    ? SignalFeed.sine(2e-3, 730).applyAsDouble(t)
                        + SignalFeed.sine(1e-3, 50).applyAsDouble(t)
                    : SignalFeed.sine(2e-4, 50).applyAsDouble(t));
    close();
    run(0, 3 * SECOND);
    Summary.LevelFigures heard = figures.levels();
    assertThat(heard.toneHz()).isNull();
    assertThat(heard.meterDbv()).isCloseTo(-13.98, within(0.1));
    assertThat(heard.headDbv()).isCloseTo(Decibels.dbv(Math.hypot(2e-3, 1e-3)), within(0.1));
    assertThat(heard.humDbv()).isCloseTo(Decibels.dbv(2e-4), within(0.2));
  }

  @Test
  void aSecondClosingStartsAgain() {
    healthy();
    close();
    run(0, 2 * SECOND);
    open(2000);
    feed.amps(t -> 0.3);
    figures.onEvent(new ProbeEvent.SwitchChanged(5_000_000, SwitchState.ON, OffCause.USER));
    run(5 * SECOND, 5 * SECOND + 8000);
    assertThat(figures.onMs()).isEqualTo(500);
    assertThat(figures.supply().inrushPeakA()).isCloseTo(0.3, within(0.05));
    assertThat(figures.supply().steadyA()).isNull();
  }

  @Test
  void nothingIsSaidBeforeClosing() {
    run(0, 3200);
    assertThat(figures.onMs()).isNull();
    assertThat(figures.look()).isNull();
    assertThat(figures.supply().chargeC()).isNull();
    assertThat(figures.rails()).hasSize(2);
    assertThat(figures.rails().get(0).finalV()).isNull();
  }
}
