package firstamp.analysis.figures;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.model.samples.Calibration;
import firstamp.model.samples.Channel;
import firstamp.model.samples.Reading;
import firstamp.model.samples.Scaling;
import firstamp.model.samples.Zero;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class TrendSumsTest {
  private static final int LAST = 20;
  private static final int FOLLOWED = 200;

  private final Scaling scaling = new Scaling(Calibration.nominal(), Zero.NONE);

  @Test
  void findsEveryStepThatStandsOutOfTheMeanBeforeIt() {
    int found = 0;
    for (int round = 0; round < 300; round++) {
      Random random = new Random(round);
      TrendSums sums = new TrendSums(0);
      List<Integer> numbers = new ArrayList<>();
      List<Double> amps = new ArrayList<>();
      double level = 150;
      int number = 0;
      for (int k = 0; k < 3000; k++) {
        if (random.nextInt(250) == 0) {
          level = 5 + random.nextInt(300);
        }
        number += random.nextInt(1000) == 0 ? 2 : 1;
        int sumJ = (int) Math.max(0, 5 * level + 40 * random.nextGaussian());
        Reading reading = reading(number, sumJ);
        sums.add(number, reading, scaling);
        numbers.add(number);
        amps.add(scaling.supplyA(reading));
      }
      List<PowerUpTrend.CurrentStep> expected = defined(numbers, amps);
      assertThat(sums.course().steps()).as("round %d", round).isEqualTo(expected);
      found += expected.size();
    }
    assertThat(found).isGreaterThan(300);
  }

  private static Reading reading(int number, int sumJ) {
    int[] sums = new int[8];
    sums[Channel.J.ordinal()] = sumJ;
    return new Reading(number * 160L, sums, new int[8], new int[8], new long[8]);
  }

  /** At most 16 from the second second on, each followed for two seconds. */
  private static List<PowerUpTrend.CurrentStep> defined(List<Integer> numbers, List<Double> amps) {
    List<PowerUpTrend.CurrentStep> steps = new ArrayList<>();
    int begin = 0;
    for (int k = 0; k < amps.size(); k++) {
      if (k > 0 && numbers.get(k) != numbers.get(k - 1) + 1) {
        begin = k;
      }
      if (k - begin < LAST || numbers.get(k) < 100 || steps.size() == 16) {
        continue;
      }
      double mean = mean(amps, begin, k);
      if (amps.get(k) - mean > Math.max(0.02, 0.25 * mean)) {
        int end = k + FOLLOWED;
        double peak = 0;
        double tail = 0;
        int at = k;
        while (at < end && at < amps.size() && numbers.get(at) - numbers.get(k) == at - k) {
          peak = Math.max(peak, amps.get(at));
          tail += at >= end - LAST && at > k ? amps.get(at) : 0;
          at++;
        }
        if (at == end) {
          steps.add(new PowerUpTrend.CurrentStep(numbers.get(k) * 10.0, mean, peak, tail / LAST));
        }
        begin = at;
        k = at - 1;
      }
    }
    return steps;
  }

  /** Mean of the last twenty, added in the order in which a ring of twenty holds them. */
  private static double mean(List<Double> amps, int begin, int end) {
    double[] ring = new double[LAST];
    for (int k = end - LAST; k < end; k++) {
      ring[(k - begin) % LAST] = amps.get(k);
    }
    double sum = 0;
    for (double value : ring) {
      sum += value;
    }
    return sum / LAST;
  }
}
