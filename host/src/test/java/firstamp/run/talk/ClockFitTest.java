package firstamp.run.talk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;

class ClockFitTest {
  @Test
  void findsASlowProbeBehindJitter() {
    ClockFit fit = new ClockFit();
    Random random = new Random(7);
    double rate = 1.003; // The probe's second lasts 1.003 s: a resonator 0.3 % slow.
    for (long micros = 0; micros < 60_000_000; micros += 8_000) {
      double delay = 400_000 + Math.abs(random.nextGaussian()) * 3_000_000;
      fit.add(micros, Math.round(micros * 1000 * rate + delay));
    }
    assertThat(fit.slowPpm()).isCloseTo(3000, within(15.0));
    assertThat(fit.points()).isGreaterThan(50);
  }

  @Test
  void takesTheProbeAsExactUntilItKnowsBetter() {
    ClockFit fit = new ClockFit();
    assertThat(fit.rate()).isEqualTo(1);
    fit.add(5_000_000, 1_000_000_000L);
    assertThat(fit.probeMicrosAt(1_500_000_000L)).isEqualTo(5_500_000);
    fit.reset();
    assertThat(fit.probeMicrosAt(0)).isZero();
  }
}
