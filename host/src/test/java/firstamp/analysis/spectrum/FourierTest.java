package firstamp.analysis.spectrum;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class FourierTest {
  @ParameterizedTest
  @ValueSource(ints = {800, 200})
  void equalsTheSumOfTheDefinition(int length) {
    Fourier fourier =
        length == 800 ? new Fourier(800, 5, 5, 4, 4, 2) : new Fourier(200, 5, 5, 4, 2);
    Random random = new Random(7);
    double[] re = random.doubles(length, -1, 1).toArray();
    double[] im = random.doubles(length, -1, 1).toArray();
    System.arraycopy(re, 0, fourier.re(), 0, length);
    System.arraycopy(im, 0, fourier.im(), 0, length);

    fourier.transform();

    for (int k = 0; k < length; k++) {
      double sumRe = 0;
      double sumIm = 0;
      for (int n = 0; n < length; n++) {
        double angle = -2 * Math.PI * (n * k % length) / length;
        sumRe += re[n] * Math.cos(angle) - im[n] * Math.sin(angle);
        sumIm += re[n] * Math.sin(angle) + im[n] * Math.cos(angle);
      }
      assertThat(fourier.re()[k]).isCloseTo(sumRe, within(1e-11));
      assertThat(fourier.im()[k]).isCloseTo(sumIm, within(1e-11));
    }
  }

  @Test
  void refusesALengthThatIsNotTheProductOfItsRadices() {
    assertThatThrownBy(() -> new Fourier(800, 5, 5, 4, 4))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("factor of 2 of 800");
  }
}
