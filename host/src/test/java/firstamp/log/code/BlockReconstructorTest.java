package firstamp.log.code;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;

import java.util.SplittableRandom;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Every number of coefficients against the formula of {@code schemas/log-schema.md}, word for word.
 */
final class BlockReconstructorTest {
  private static final int START = -7;

  @ParameterizedTest
  @ValueSource(ints = {0, 1, 2, 3, 4, 5, 6, 8, 9, 12, 13, 16, 17, 20, 24, 31, 32})
  void sameAsTheFormula(int order) {
    SplittableRandom random = new SplittableRandom(order);
    int[] own = random.ints(order, -5000 / Math.max(1, order), 5000 / Math.max(1, order)).toArray();
    for (int count : new int[] {1, 2, 255, 256, 513}) {
      int[] errors = random.ints(count, -400, 400).toArray();
      int[] sums = random.ints(count, -900_000, 900_000).toArray();
      int[] ofBlock = sums.clone();
      int[] values = new int[count + 3];
      long[] x = new long[PredictorBank.MOST_OWN + count];
      java.util.Arrays.fill(x, 0, PredictorBank.MOST_OWN, START);
      BlockReconstructor recurrence = new BlockReconstructor(errors, ofBlock, 300, values, x);
      long[] pairs = BlockReconstructor.pairs(own);
      // In two blocks, the first of an odd length where it can be.
      int cut = count / 2;
      recurrence.block(pairs, 0, 3, cut);
      System.arraycopy(sums, cut, ofBlock, 0, count - cut);
      recurrence.block(pairs, cut, 3 + cut, count - cut);
      assertArrayEquals(plain(own, errors, sums, 300, 3), values);
    }
  }

  private static int[] plain(int[] own, int[] errors, int[] sums, int base, int place) {
    int[] x = new int[errors.length];
    int[] values = new int[place + errors.length];
    for (int k = 0; k < errors.length; k++) {
      int sum = sums[k];
      for (int i = 0; i < own.length; i++) {
        sum += own[i] * (k - 1 - i < 0 ? START : x[k - 1 - i]);
      }
      x[k] = errors[k] + ((sum + 2048) >> 12);
      values[place + k] = x[k] + base;
    }
    return values;
  }
}
