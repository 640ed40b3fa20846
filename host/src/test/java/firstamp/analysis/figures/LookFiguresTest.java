package firstamp.analysis.figures;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import firstamp.analysis.Sheets;
import firstamp.analysis.SignalFeed;
import firstamp.model.Look;
import firstamp.model.ProbeEvent;
import firstamp.model.Summary;
import firstamp.model.samples.Zero;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What the first look gives: resistance, capacitance and voltage. */
final class LookFiguresTest {
  private final PowerUpFigures figures =
      new PowerUpFigures(Sheets.sheet(null), new SignalFeed().calibration(), 330, 10);

  @Test
  void theLookGivesOhmsMicrofaradsAndVolts() {
    // 12.02 V behind 330 ohm into 210 ohm and 3180 uF for 3 s: tau = 3180 uF (330 || 210 ohm).
    double parallel = 330.0 * 210 / 540;
    double tau = 3180e-6 * parallel;
    long sumV = 0;
    long sumJ = 0;
    int pairs = 1500;
    List<Double> v = new java.util.ArrayList<>();
    List<Double> j = new java.util.ArrayList<>();
    for (int k = 0; k < pairs; k++) {
      double volts = 12.02 * 210 / 540 * (1 - Math.exp(-k * 0.002 / tau));
      double countV = volts / 60 * 1024 + 3.25;
      double countJ = (12.02 - volts) / 330 / 0.4 * 1024 + 5.5;
      sumV += Math.round(countV);
      sumJ += Math.round(countJ);
      v.add(countV);
      j.add(countJ);
    }
    int endV16 = (int) Math.round(16 * v.get(pairs - 1));
    int endJ16 = (int) Math.round(16 * j.get(pairs - 1));
    Look look =
        new Look(
            Look.Result.CLEAR,
            true,
            0,
            1_500_000,
            new Zero(0, 88, 52),
            pairs,
            endV16,
            endJ16,
            sumV,
            sumJ);
    figures.onEvent(new ProbeEvent.Looked(3_000_000, look));
    Summary.LookFigures said = figures.look();
    assertThat(said.result()).isEqualTo("clear");
    assertThat(said.supplyV()).isCloseTo(12.02, within(0.02));
    assertThat(said.ohm()).isCloseTo(210, within(1.0));
    assertThat(said.uF()).isCloseTo(3180, within(60.0));
  }

  @Test
  void ofADeadShortTheOhmsAreAtMostACountOfVolts() {
    Look look =
        new Look(Look.Result.SHORT, false, 0, 1_000_000, Zero.NONE, 500, 0, 16 * 93, 0, 500 * 93);
    figures.onEvent(new ProbeEvent.Looked(1_000_000, look));
    // 93 counts are 36.3 mA; 58.6 mV over that are 1.61 ohm.
    assertThat(figures.look().ohm()).isCloseTo(1.613, within(0.01));
    assertThat(figures.look().atMost()).isTrue();
    assertThat(figures.look().uF()).isNull();
    assertThat(figures.look().supplyV()).isCloseTo(11.99, within(0.02));
  }
}
