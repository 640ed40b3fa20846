package firstamp.log.code;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class LagProductsTest {
  private static final int COUNT = 1000;

  private final Random random = new Random(3);

  @ParameterizedTest
  @CsvSource({
    "4, 0, 1, 0",
    "8, 0, 1, 0",
    "16, 0, 1, 1",
    "8, 4, 1, 0",
    "16, 8, 1, 0",
    "16, 3, 1, 0",
    "8, 16, 8, 0"
  })
  void areTheSumsOfTheProductsOfAllVariables(int own, int taps, int stride, int shift) {
    int[] values = series(COUNT, 2047 << shift);
    int[] other = series(COUNT * stride, 511);
    ReferenceChannel companion =
        taps == 0 ? null : ReferenceChannel.of(other, other.length, stride, 1 - stride, taps);
    LagProducts moments = new LagProducts(values, shift, companion, own);
    for (int begin : new int[] {moments.first(), 300, COUNT - 256}) {
      for (int n : new int[] {32, 63, 256}) {
        double[] m = moments.of(begin, begin + n);
        for (int row = 0; row <= moments.variables(); row++) {
          for (int column = 0; column <= row; column++) {
            double sum = 0;
            for (int k = begin; k < begin + n; k++) {
              sum +=
                  variable(row, k, values, shift, companion, taps, own)
                      * variable(column, k, values, shift, companion, taps, own);
            }
            assertThat(m[LagProducts.at(row, column)])
                .as("row %d, column %d of %d values from %d", row, column, n, begin)
                .isEqualTo(sum);
          }
        }
      }
    }
  }

  private static double variable(
      int number, int k, int[] values, int shift, ReferenceChannel companion, int taps, int own) {
    if (number == 0) {
      return 1;
    }
    if (number <= taps) {
      return companion.value(k, number - 1);
    }
    int lag = number <= taps + own ? number - taps : 0;
    return values[k - lag] >> shift;
  }

  private int[] series(int count, int highest) {
    int[] values = new int[count];
    for (int k = 0; k < count; k++) {
      values[k] = random.nextInt(2 * highest + 1) - highest;
    }
    return values;
  }
}
