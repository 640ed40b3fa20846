package firstamp.analysis.figures;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import firstamp.model.JobSheet;
import firstamp.model.Summary;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Every figure worked out by hand beside it. */
class InrushExpectedTest {
  private static JobSheet sheet(String kind, Double limitA) {
    return new JobSheet(
        1,
        new JobSheet.SetInfo("Set", "other", "negative", null, null),
        new JobSheet.Supply(kind, "supply-lead", 12.0, null, null, limitA, null, true),
        null,
        List.of(),
        null,
        Map.of());
  }

  private static Summary.LookFigures look(Double ohm, Double uF, Double supplyV) {
    return new Summary.LookFigures("clear", ohm, uF, supplyV);
  }

  @Test
  void aResistanceAloneHoldsIt() {
    // Adaptor 0.5 ohm and 0.1 of the probe; 6 V / 0.6 ohm = 10 A; 3 x 0.6 ohm x 1000 uF = 1.8 ms.
    InrushExpected is = InrushExpected.of(sheet("adaptor", null), look(null, 1000.0, 6.0), 330.0);
    assertThat(is.peakA()).isCloseTo(10, within(1e-9));
    assertThat(is.ms()).isCloseTo(1.8, within(1e-9));
    assertThat(is.limitA()).isNull();
  }

  @Test
  void whatTheLookHasChargedIsNotInIt() {
    // 330 ohm of set behind 330 ohm: 3 V of 6 V are there. (6 - 3) V / 1.1 ohm of dry cells =
    // 2.727 A, and the set draws 6 V / 330 ohm = 0.018 A: 2.745 A. 3 x 1.1 ohm x 1000 uF = 3.3 ms.
    InrushExpected is = InrushExpected.of(sheet("battery", null), look(330.0, 1000.0, 6.0), 330.0);
    assertThat(is.peakA()).isCloseTo(2.7455, within(1e-4));
    assertThat(is.ms()).isCloseTo(3.3, within(1e-9));
    // The same without the resistor: 6 / 1.1 + 0.018 = 5.473 A.
    assertThat(InrushExpected.of(sheet("battery", null), look(330.0, 1000.0, 6.0), null).peakA())
        .isCloseTo(5.4727, within(1e-4));
  }

  @Test
  void aSupplyThatLimitsTakesTheTimeOfTheCharge() {
    // 110 ohm behind 330: 12 V x 330 / 440 = 9 V are left, 9 V x 2000 uF = 18 mC. The set draws
    // 12 / 110 = 0.109 A of the 2 A: 18 mC / 1.891 A = 9.52 ms. 9 V / 0.3 ohm = 30 A is beyond the
    // range of 12.5 A.
    InrushExpected is = InrushExpected.of(sheet("bench", 2.0), look(110.0, 2000.0, 12.0), 330.0);
    assertThat(is.limitA()).isEqualTo(2);
    assertThat(is.ms()).isCloseTo(9.52, within(0.01));
    assertThat(is.peakA()).isEqualTo(12.5);
  }

  @Test
  void withoutCapacitorsOrVoltsNothingIsForetold() {
    assertThat(InrushExpected.of(sheet("bench", 2.0), look(110.0, null, 12.0), 330.0)).isNull();
    assertThat(InrushExpected.of(sheet("bench", 2.0), look(110.0, 20.0, null), 330.0)).isNull();
    assertThat(InrushExpected.of(sheet("bench", 2.0), null, 330.0)).isNull();
  }
}
