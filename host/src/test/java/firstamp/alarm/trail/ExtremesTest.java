package firstamp.alarm.trail;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** Extremes kept from value to value, against looking at every value again. */
class ExtremesTest {
  @Test
  void sameAsLookingAtAllOfThemAgain() {
    for (int seed = 0; seed < 50; seed++) {
      SplittableRandom random = new SplittableRandom(seed);
      History trail = new History(100);
      Extremes extremes = new Extremes(trail);
      int over = 0;
      for (int n = 0; n < 1000; n++) {
        // Few different values: equal ones must not be taken for one another.
        trail.put(random.nextInt(150) == 0 ? Double.NaN : random.nextInt(-5, 6));
        boolean anew = random.nextInt(100) == 0;
        over = anew ? 1 + random.nextInt(Math.min(n + 1, 100)) : Math.min(100, over + 1);
        if (seed % 2 == 0 || random.nextInt(40) == 0) {
          extremes.over(over);
          compare(trail, extremes, over);
        }
      }
    }
  }

  private static void compare(History trail, Extremes extremes, int over) {
    double lowest = trail.ago(0);
    double highest = lowest;
    for (int k = 0; k < over; k++) {
      lowest = Math.min(lowest, trail.ago(k));
      highest = Math.max(highest, trail.ago(k));
    }
    assertThat(extremes.lowest()).isEqualTo((Double) lowest);
    assertThat(extremes.highest()).isEqualTo((Double) highest);
  }
}
