package firstamp.analysis.figures;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Rows seen second hand: component texts, a maker's answers, a period table quoted in a list. */
final class LeakageAcceptanceTest {
  @ParameterizedTest
  @CsvSource({"47,40,18.8", "100,10,10", "2200,35,770", "1,50,3", "10,25,3"})
  void aNewPart(double microfarad, double ratedV, double microampere) {
    assertThat(LeakageAcceptance.newPartA(microfarad / 1e6, ratedV) * 1e6)
        .isCloseTo(microampere, within(microampere * 1e-9));
  }

  @Test
  void anOldCan() {
    // 560 uF, 400 V: 22.7 mA (the table, second hand).
    assertThat(LeakageAcceptance.oldCanA(560e-6, 400) * 1000).isCloseTo(22.7, within(0.05));
    // Each band from its own factor, by hand.
    assertThat(LeakageAcceptance.oldCanA(1000e-6, 100) * 1000).isCloseTo(10.3, within(1e-9));
    assertThat(LeakageAcceptance.oldCanA(1000e-6, 101) * 1000).isCloseTo(20.3, within(1e-9));
    assertThat(LeakageAcceptance.oldCanA(1000e-6, 350) * 1000).isCloseTo(25.3, within(1e-9));
    assertThat(LeakageAcceptance.oldCanA(1000e-6, 2)).isNaN();
    assertThat(LeakageAcceptance.oldCanA(1000e-6, 501)).isNaN();
  }
}
