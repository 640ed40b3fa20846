package firstamp.alarm;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.model.Alarm;
import firstamp.model.Look;
import java.util.List;
import java.util.Random;
import java.util.function.BiConsumer;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Generated power-ups: healthy ones raise nothing, faults from 1.2 to 20 times the limit (drawn
 * evenly over the logarithm) are never missed. The seed of a failing run is in its message.
 */
class GeneratedRunsTest {
  private static final double STEADY_MS = 4000;

  /** Surge, settling rail, motor, speech, ripple, supply ±8 %, noise; up to 0.85 of each limit. */
  private static Bench healthy(Random random) {
    Bench bench = new Bench(TestSheets.unit());
    double supply = 12 * (1 + 0.07 * (2 * random.nextDouble() - 1));
    double idle = 0.003 / 0.85 + random.nextDouble() * 0.5;
    bench.look(Look.Result.CLEAR, supply * 0.4, supply * 0.6 / 330).close();
    double surge = 0.85 * 4.5 * random.nextDouble();
    double tauMs = 5 + 10 * random.nextDouble();
    double railTauMs = 10 + 25 * random.nextDouble(); // within its window well before settleMs
    double rail = 8.2 * (1 + 0.85 * 0.05 * (2 * random.nextDouble() - 1));
    double motorA = random.nextBoolean() ? 0.3 * random.nextDouble() : 0;
    double motorAt = 1000 + 1000 * random.nextDouble();
    double toneShare = random.nextBoolean() ? 0.9 : 0.1;
    double below = 38 + 0.85 * 6 * (2 * random.nextDouble() - 1);
    for (int k = 0; k * 10 < STEADY_MS; k++) {
      double ms = k * 10 + 5;
      double motor = ms < motorAt ? 0 : motorA * (1 + 0.8 * Math.exp(-(ms - motorAt) / 80));
      bench.ampere =
          Math.min(0.85, idle + motor) + surge * Math.exp(-ms / tauMs) + 0.0003 * noise(random);
      bench.volts = supply - 0.2 * bench.ampere + 0.02 * noise(random);
      double ripple = 0.04 * Math.sin(2 * Math.PI * 0.097 * k);
      bench.rails[0] = rail * (1 - Math.exp(-ms / railTauMs)) + 0.012 * noise(random) + ripple;
      bench.run(10);
      if (k % 20 == 19) {
        bench.ripple(rail, 0.85 * 0.05 * random.nextDouble());
        double meter = random.nextInt(4) == 0 ? 1e-3 : 0.05 + 0.3 * random.nextDouble();
        bench.levels(meter / Math.pow(10, below / 20), meter, toneShare);
      }
    }
    return bench;
  }

  private static double noise(Random random) {
    return Math.max(-4, Math.min(4, random.nextGaussian()));
  }

  private static void raisesNothing(int runs, long firstSeed) {
    for (long seed = firstSeed; seed < firstSeed + runs; seed++) {
      Bench bench = healthy(new Random(seed));
      bench.open();
      bench.ampere = 0;
      bench.volts = 0;
      for (int k = 0; k < 100; k++) {
        bench.rails[0] = 8.2 * Math.exp(-k / 30.0);
        bench.run(10);
      }
      assertThat(bench.engine.alarms()).as("seed " + seed).isEmpty();
      assertThat(bench.actions).as("seed " + seed).isEmpty();
    }
  }

  @Test
  void healthySetsRaiseNothing() {
    raisesNothing(100, 1);
  }

  @Tag("full")
  @Test
  void threeThousandHealthySetsRaiseNothing() {
    raisesNothing(3000, 10_000);
  }

  /** How far over its limit the fault is: 1.2 to 20 times. */
  private static double factor(Random random) {
    return 1.2 * Math.pow(20 / 1.2, random.nextDouble());
  }

  private static void neverMissed(String rule, int runs) {
    BiConsumer<Bench, Double> fault =
        switch (rule) {
          case "short" ->
              (bench, factor) -> {
                bench.ampere = 1.5;
                bench.volts = 1.5 * 2.5 / factor;
              };
          case "no-draw" -> (bench, factor) -> bench.ampere = 0.002 / factor;
          case "rail-window" ->
              (bench, factor) -> bench.rails[0] = 8.2 - Math.min(8.2, 0.41 * factor);
          case "over-voltage" -> (bench, factor) -> bench.rails[0] = Math.min(19.5, 9.8 * factor);
          case "wrong-polarity" -> (bench, factor) -> bench.rails[0] = -0.5 * factor;
          case "ripple" -> (bench, factor) -> bench.ripple(8.2, 0.05 * factor);
          case "head-below-meter" ->
              (bench, factor) -> bench.levels(0.1 / 158 / factor, 0.1, 0.9); // 44 dB
          default -> throw new IllegalArgumentException(rule);
        };
    for (long seed = 1; seed <= runs; seed++) {
      Random random = new Random(seed);
      double factor = factor(random);
      Bench bench = healthy(random);
      double begin = bench.ms();
      for (int k = 0; k < 200 && !bench.raised(rule); k++) {
        if (k % 20 == 0 || rule.charAt(0) != 'h' && !rule.equals("ripple")) {
          fault.accept(bench, factor);
        }
        bench.run(10);
      }
      assertThat(bench.raised(rule)).as("seed " + seed + ", factor " + factor).isTrue();
      Alarm alarm = bench.only(rule);
      assertThat(alarm.atMs() - begin).as("seed " + seed).isLessThanOrEqualTo(1500);
    }
  }

  @ParameterizedTest
  @CsvSource({
    "short",
    "no-draw",
    "rail-window",
    "over-voltage",
    "wrong-polarity",
    "ripple",
    "head-below-meter"
  })
  void faultsAreNeverMissed(String rule) {
    neverMissed(rule, 50);
  }

  @Tag("full")
  @ParameterizedTest
  @CsvSource({
    "short",
    "no-draw",
    "rail-window",
    "over-voltage",
    "wrong-polarity",
    "ripple",
    "head-below-meter"
  })
  void aThousandFaultsAreNeverMissed(String rule) {
    neverMissed(rule, 1000);
  }

  /** The same stream gives the same alarms at the same times, bit for bit. */
  @Test
  void aReplayRaisesTheSame() {
    for (long seed = 1; seed <= 10; seed++) {
      List<Alarm> first = faulty(seed);
      assertThat(first).isNotEmpty();
      assertThat(faulty(seed)).isEqualTo(first);
    }
  }

  private static List<Alarm> faulty(long seed) {
    Bench bench = healthy(new Random(seed));
    bench.rails[0] = 7;
    bench.ampere = 0.001;
    bench.run(1000).open().run(500);
    return bench.transitions;
  }
}
