package firstamp.emulate;

import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import firstamp.model.samples.Channel;
import firstamp.model.samples.SamplePlan;
import firstamp.protocol.rules.TripDecision;
import firstamp.protocol.rules.TripRules;
import firstamp.protocol.rules.Zeros;
import java.util.Arrays;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * How well the probe's own limits of the current do on generated conversions: surge limit 4.5 A for
 * 60 ms, running limit 1 A. Faults from 1.2 to 20 times the limit (as far as the range reaches),
 * healthy up to 0.85 of it, noise 0.7 count. The other rules: {@code RuleQualityTest}.
 */
final class TripQualityTest {
  private static final double AMPERE_PER_COUNT = 12.5 / 1024;
  private static final double HIGHEST_A = 12.45;
  private static final double SECONDS = 1;

  /** Milliseconds from the fault to the switch pin; null = no trip. */
  private static Double tripsAfter(Random random, double faultMs, double faultA) {
    TripRules watch = new TripRules(TestHost.limits().build(), new Zeros(0, 0, 0), 0);
    double surge = 0.85 * 4.5 * random.nextDouble();
    double tauMs = 5 + 10 * random.nextDouble();
    double idle = 0.85 * random.nextDouble();
    for (long n = 0; n < SECONDS * SamplePlan.CONVERSIONS_PER_SECOND; n++) {
      if (SamplePlan.channelAt(n) != Channel.I) {
        continue;
      }
      double ms = SamplePlan.microsOf(n) / 1000.0;
      double ampere = ms >= faultMs ? faultA : Math.max(idle, surge * Math.exp(-ms / tauMs));
      int counts = (int) Math.round(ampere / AMPERE_PER_COUNT + 0.7 * random.nextGaussian());
      TripDecision decision = watch.conversion(n, Math.max(0, Math.min(1023, counts)));
      if (decision != null) {
        return ms + TripRules.PIN_LOW_MICROS / 1000.0 - faultMs;
      }
    }
    return null;
  }

  private static void neverMissed(int runs) {
    double[] times = new double[runs];
    for (int k = 0; k < runs; k++) {
      Random random = new Random(k);
      boolean starting = random.nextInt(3) == 0;
      double limit = starting ? 4.5 : 1.0;
      double factor = 1.2 * Math.pow(20 / 1.2, random.nextDouble());
      double at = starting ? 50 * random.nextDouble() : 100 + 300 * random.nextDouble();
      Double after = tripsAfter(random, at, Math.min(HIGHEST_A, limit * factor));
      assertNotNull(after, "missed, seed " + k + ", factor " + factor);
      assertTrue(after > 0, "before the fault, seed " + k);
      times[k] = after;
    }
    Arrays.sort(times);
    System.out.println(
        String.format(
            Locale.ROOT,
            "| `over-current` | %d | 0 | %.2f | %.2f |",
            runs,
            times[runs / 2],
            times[runs - 1]));
    // Three conversions of I in a row, 250 us apart, and 80 us for the last one and the code.
    assertTrue(times[runs - 1] <= 0.83, "worst " + times[runs - 1]);
  }

  private static void raisesNothing(int runs) {
    for (int k = 0; k < runs; k++) {
      assertNull(
          tripsAfter(new Random(100_000 + k), Double.POSITIVE_INFINITY, 0), "healthy, seed " + k);
    }
  }

  @Test
  void faultsAreNeverMissed() {
    neverMissed(50);
  }

  @Test
  void healthySetsDoNotTrip() {
    raisesNothing(100);
  }

  @Tag("full")
  @Test
  void aThousandFaultsAreNeverMissed() {
    neverMissed(1000);
  }

  @Tag("full")
  @Test
  void threeThousandHealthySetsDoNotTrip() {
    raisesNothing(3000);
  }
}
