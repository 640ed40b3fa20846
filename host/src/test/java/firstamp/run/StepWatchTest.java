package firstamp.run;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Offset.offset;

import firstamp.model.JobSheet;
import firstamp.pipeline.SlopeFit;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

/** Steps on computed courses: charging through a resistor, V = V0 (1 - exp(-t / RC)). */
class StepWatchTest {
  private static final double FARAD = 1000e-6;

  private StepWatch watch;
  private double endedMs;

  private static JobSheet.Step step(double dwellMs, double belowA, boolean forming) {
    return new JobSheet.Step(6.0, 0.1, dwellMs, 1.0, belowA, 120_000.0, forming);
  }

  /** Runs until it ends; volts and ampere over seconds. */
  private StepWatch.Next run(
      JobSheet.Step step, double farad, DoubleUnaryOperator volts, DoubleUnaryOperator ampere) {
    watch = new StepWatch(step, farad);
    for (double ms = 0; ms < 200_000; ms += 10) {
      StepWatch.Next next =
          watch.reading(ms, volts.applyAsDouble(ms / 1000), ampere.applyAsDouble(ms / 1000));
      endedMs = ms;
      if (next == StepWatch.Next.GO_ON || next == StepWatch.Next.STOP) {
        return next;
      }
    }
    return StepWatch.Next.WAIT;
  }

  @Test
  void goesOnWhenTheCurrentHasSettledAndNotByTimeAlone() {
    // Falls towards 20 mA with 10 s; slope under 1 % of it a minute (0.2 mA) from about 57 s on:
    // 60 * 50 mA / 10 s * exp(-t / 10 s) = 0.2 mA at t = 10 ln(1500) = 73 s, at the middle of a
    // window of 10 s.
    StepWatch.Next next =
        run(step(5000, 0.1, false), 0, t -> 6, t -> 0.020 + 0.050 * Math.exp(-t / 10));
    assertThat(next).isEqualTo(StepWatch.Next.GO_ON);
    assertThat(endedMs).isBetween(72_000.0, 84_000.0);
    assertThat(watch.ampere()).isCloseTo(0.020, offset(0.0005));
    assertThat(watch.words().english()).endsWith("300 ohm.");
  }

  @Test
  void aSteadyCurrentWaitsForTheDwell() {
    assertThat(run(step(30_000, 0.1, false), 0, t -> 6, t -> 0.05)).isEqualTo(StepWatch.Next.GO_ON);
    assertThat(endedMs).isBetween(29_000.0, 32_500.0);
  }

  @Test
  void waitsForTheVolts() {
    assertThat(run(step(2000, 0.1, false), 0, t -> t < 20 ? 3 : 6, t -> 0.05))
        .isEqualTo(StepWatch.Next.GO_ON);
    assertThat(endedMs).isGreaterThan(22_000);
  }

  @Test
  void doesNotGoOnWhileMoreThanAskedForFlows() {
    assertThat(run(step(2000, 0.01, false), 0, t -> 6, t -> 0.05)).isEqualTo(StepWatch.Next.STOP);
    assertThat(watch.words().english()).contains("time of this step is over").contains("10 mA");
  }

  @Test
  void stopsOnTooMuchCurrentButNotOnCharging() {
    // 3 C V / I = 3 x 1000 uF x 6 V / 0.1 A = 180 ms, at least 300 ms.
    assertThat(run(step(2000, 0.1, false), FARAD, t -> 6, t -> t < 0.25 ? 0.5 : 0.05))
        .isEqualTo(StepWatch.Next.GO_ON);
    assertThat(run(step(2000, 0.1, false), FARAD, t -> 6, t -> t < 0.35 ? 0.5 : 0.05))
        .isEqualTo(StepWatch.Next.STOP);
    assertThat(watch.words().english()).contains("500 mA").contains("allows 100 mA");
    assertThat(run(step(2000, 0.1, false), 0, t -> 6, t -> t < 5 ? 0.05 : 0.11))
        .isEqualTo(StepWatch.Next.STOP);
  }

  @Test
  void stopsWhenTheSupplyIsTurnedTooHigh() {
    assertThat(run(step(9000, 0.1, false), 0, t -> t < 3 ? 7.1 : 7.3, t -> 0.05))
        .isEqualTo(StepWatch.Next.STOP);
    assertThat(watch.words().english()).contains("Turn it back");
  }

  /** Charging at 5 s time constant with a leak of 2 mA on top: the leak is what is left. */
  @Test
  void leakageIsToldApartFromCharging() {
    double tau = 5;
    watch = new StepWatch(step(60_000, 0.1, true), FARAD);
    for (double ms = 0; ms < 4000; ms += 10) {
      double t = ms / 1000;
      double volts = 6 - 0.15 * Math.exp(-t / tau);
      double charging = FARAD * 0.15 / tau * Math.exp(-t / tau);
      watch.reading(ms, volts, charging + 0.002);
    }
    assertThat(watch.leakA()).isCloseTo(0.002, offset(0.00001));
  }

  @Test
  void formingStopsWhenTheLeakageRisesAndNotWhileItFalls() {
    assertThat(run(step(20_000, 0.01, true), FARAD, t -> 6, t -> 0.0002 + 0.010 * Math.exp(-t / 6)))
        .isEqualTo(StepWatch.Next.GO_ON);
    // 0.01 x 1000 uF x 6 V = 60 uA; 0.01 x 1000 + 0.3 = 10.3 mA (see LeakageAcceptanceTest).
    assertThat(watch.words().english())
        .contains("new capacitor leaks up to 0.06 mA")
        .contains("10.3 mA");
    assertThat(run(step(60_000, 0.0001, true), FARAD, t -> 6, t -> 0.004 + Math.abs(t - 20) * 2e-4))
        .isEqualTo(StepWatch.Next.STOP);
    assertThat(watch.words().english()).contains("leakage rises");
    assertThat(endedMs).isBetween(22_000.0, 32_000.0);
    // The same course where nothing is formed is the set's own affair.
    assertThat(run(step(2000, 0.1, false), FARAD, t -> 6, t -> 0.004 + Math.abs(t - 20) * 2e-4))
        .isNotEqualTo(StepWatch.Next.STOP);
  }

  @Test
  void heatInTheCanIsSaidFromAQuarterAndStopsAtHalfAWatt() {
    // 6 V: 0.25 W at 41.7 mA, 0.5 W at 83.3 mA.
    watch = new StepWatch(step(60_000, 0.1, true), FARAD);
    StepWatch.Next said = StepWatch.Next.WAIT;
    for (double ms = 0; ms < 5000 && said == StepWatch.Next.WAIT; ms += 10) {
      said = watch.reading(ms, 6, 0.043);
    }
    assertThat(said).isEqualTo(StepWatch.Next.SAY);
    assertThat(watch.words().english()).contains("0.258 W");
    assertThat(run(step(2000, 0.1, true), FARAD, t -> 6, t -> 0.0835))
        .isEqualTo(StepWatch.Next.STOP);
    assertThat(watch.words().english()).contains("W into heat");
    assertThat(run(step(2000, 0.1, true), FARAD, t -> 6, t -> 0.041))
        .as("under a quarter of a watt nothing is said")
        .isNotEqualTo(StepWatch.Next.STOP);
  }

  @Test
  void slopeIsThatOfAStraightLine() {
    SlopeFit fit = new SlopeFit(10);
    for (int k = 0; k < 25; k++) {
      fit.add(1 + 0.5 * k);
    }
    assertThat(fit.full()).isTrue();
    assertThat(fit.perMinute()).isCloseTo(30, offset(1e-9));
  }
}
