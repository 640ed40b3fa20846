package firstamp.analysis.figures;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import firstamp.analysis.Sheets;
import firstamp.analysis.SignalFeed;
import firstamp.model.samples.Channel;
import firstamp.model.samples.ReadingReducer;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

class ChargeFitTest {
  private static Evidence run(DoubleUnaryOperator amps, int seconds) {
    SignalFeed feed = new SignalFeed().noise(0.7, 9).amps(amps).with(Channel.V, t -> 12);
    PowerUpFigures figures = new PowerUpFigures(Sheets.sheet(null), feed.calibration(), 330, 10);
    figures.closedAt(0);
    new ReadingReducer(figures::onReading)
        .accept(0, feed.block(0, seconds * 16_000).counts(), 0, seconds * 16_000);
    return figures.evidence();
  }

  @Test
  void takesTheChargingOutAndLeavesTheLeakage() {
    // 1000 uF through 100 ohm at 12 V, behind it 4 mA of leakage: tau 100 ms, 12 mC.
    ChargeFit fit = ChargeFit.of(run(t -> 0.12 * Math.exp(-t / 0.1) + 0.004, 5).course());
    assertThat(fit.tauMs()).isCloseTo(100, within(1.0));
    assertThat(fit.tauMsError()).isBetween(0.0, 1.0);
    assertThat(fit.chargeC()).isCloseTo(0.012, within(0.0008));
    assertThat(fit.rest().get(2)).isCloseTo(0.004, within(0.0015));
    assertThat(fit.rest().get(400)).isCloseTo(0.004, within(0.0003));
  }

  @Test
  void saysNothingWithoutASurgeOrWithTooShortATime() {
    assertThat(ChargeFit.of(run(t -> 0.1, 3).course())).isNull();
    assertThat(ChargeFit.of(null)).isNull();
  }

  @Test
  void surgeChargeGivesTheCapacitance() {
    // 1000 uF at 12 V are 12 mC.
    Double uF = SupplyCalculation.surgeUf(run(t -> 0.12 * Math.exp(-t / 0.1) + 0.02, 4));
    assertThat(uF).isCloseTo(1000, within(40.0));
    assertThat(SupplyCalculation.surgeUf(run(t -> 0.1 + 0.02 * t, 4))).isNull();
  }

  @Test
  void energyIsTheIntegralOfThePower() {
    assertThat(run(t -> 0.1, 4).course().supply().energyJ()).isCloseTo(4.8, within(0.02));
  }

  @Test
  void shapesAreNamed() {
    assertThat(shape(run(t -> 0.1, 3))).isEqualTo(SupplyShape.Kind.TOO_SHORT);
    assertThat(shape(run(t -> 0.1, 10))).isEqualTo(SupplyShape.Kind.STEADY);
    assertThat(shape(run(t -> 0.1 + 1.5 * Math.exp(-t / 0.02), 10)))
        .isEqualTo(SupplyShape.Kind.SURGE);
    assertThat(shape(run(t -> 0.1 + 0.1 * Math.exp(-t / 6), 20)))
        .isEqualTo(SupplyShape.Kind.FORMING);
    assertThat(shape(run(t -> 0.1 + 0.005 * t, 20))).isEqualTo(SupplyShape.Kind.CREEP);
    assertThat(shape(run(t -> 0.1 + 0.03 * Math.sin(t), 20))).isEqualTo(SupplyShape.Kind.MOVING);
  }

  private static SupplyShape.Kind shape(Evidence evidence) {
    return SupplyShape.of(evidence.course(), evidence.supply()).kind();
  }
}
