package firstamp.window.words;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Locale;
import org.junit.jupiter.api.Test;

class NumbersTest {
  private final Numbers numbers = new Numbers(Locale.ENGLISH);

  @Test
  void writesCurrentsWithThePlacesThatMeanSomething() {
    assertThat(numbers.amps(0.00843).toString()).isEqualTo("8.4 mA");
    assertThat(numbers.amps(0.09994).toString()).isEqualTo("99.9 mA");
    assertThat(numbers.amps(0.09996).toString()).isEqualTo("100 mA");
    assertThat(numbers.amps(0.118).toString()).isEqualTo("118 mA");
    assertThat(numbers.amps(0.9994).toString()).isEqualTo("999 mA");
    assertThat(numbers.amps(0.9996).toString()).isEqualTo("1.00 A");
    assertThat(numbers.amps(8.104).toString()).isEqualTo("8.10 A");
    assertThat(numbers.amps(9.996).toString()).isEqualTo("10.0 A");
  }

  @Test
  void neverWritesAMinusBeforeZero() {
    assertThat(numbers.volts(-0.001).toString()).isEqualTo("0.00 V");
    assertThat(numbers.volts(-4.05).toString()).isEqualTo("\u22124.05 V");
    assertThat(numbers.amps(-0.00001).toString()).isEqualTo("0.0 mA");
  }

  @Test
  void writesMomentsAndElapsedTime() {
    assertThat(numbers.moment(0.71)).isEqualTo("0.7 ms");
    assertThat(numbers.moment(412.3)).isEqualTo("412 ms");
    assertThat(numbers.moment(518)).isEqualTo("518 ms");
    assertThat(numbers.moment(3100)).isEqualTo("3.10 s");
    assertThat(numbers.moment(75_400)).isEqualTo("1:15");
    assertThat(numbers.clock(59_999)).isEqualTo("0:59");
    assertThat(numbers.clock(3_661_000)).isEqualTo("1:01:01");
  }

  @Test
  void writesTheDecimalSignOfTheLanguage() {
    assertThat(new Numbers(Locale.GERMAN).volts(8.21).toString()).isEqualTo("8,21 V");
  }

  @org.junit.jupiter.api.Test
  void aWholeNumberHasNoPoint() {
    Numbers numbers = new Numbers(java.util.Locale.ENGLISH);
    assertThat(numbers.inUnit(125, "ms").toString()).isEqualTo("125 ms");
    assertThat(numbers.inUnit(518.2, "ms").toString()).isEqualTo("518 ms");
    assertThat(numbers.inUnit(1.563, "A2s").toString()).isEqualTo("1.56 A\u00b2s");
    assertThat(numbers.short4(1250)).isEqualTo("1250");
    assertThat(numbers.short3(12.5)).isEqualTo("12.5");
  }
}
