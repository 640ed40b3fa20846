package firstamp.analysis.spectrum;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;

class VuBallisticsTest {
  private static final int LENGTH = 800;

  @Test
  void fourInTurnAreFourOneAfterTheOther() {
    Random random = new Random(11);
    VuBallistics atOnce = new VuBallistics(16_000);
    VuBallistics oneByOne = new VuBallistics(16_000);
    for (int window = 0; window < 20; window++) {
      float[][] turns = new float[4][LENGTH];
      double highest = 0;
      double sum = 0;
      for (int i = 0; i < LENGTH; i++) {
        double stands = 0;
        for (float[] turn : turns) {
          turn[i] = (float) (random.nextGaussian() * (window < 10 ? 1 : 0.01));
          stands = oneByOne.put(turn[i]);
        }
        highest = Math.max(highest, stands);
        sum += stands;
      }
      VuBallistics.Swing swing = atOnce.put(turns);
      assertThat(swing.highest()).isCloseTo(highest, within(1e-6 * highest));
      assertThat(swing.mean()).isCloseTo(sum / LENGTH, within(1e-6 * highest));
    }
    assertThat(atOnce.vu()).isCloseTo(oneByOne.vu(), within(1e-5));
  }
}
