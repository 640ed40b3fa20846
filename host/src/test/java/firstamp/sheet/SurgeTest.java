package firstamp.sheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Offset.offset;

import firstamp.model.JobSheet;
import firstamp.model.text.Worded;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Energy of a surge: C V^2 / 2, from the definition, against what the limiter bears. */
class SurgeTest {
  private static JobSheet sheet(String supply) throws SheetException {
    return SheetReader.parse("s", "{\"set\":{\"name\":\"S\"},\"supply\":{" + supply + "}}").sheet();
  }

  @Test
  void publishedEnergyOfASurge() throws SheetException {
    // 100 uF at 325 V: 5.28125 J (worked from the definition). Here at 32.5 V, a hundredth of it.
    assertThat(Surge.joule(sheet("\"nominalV\":32.5,\"capacitanceUf\":100")))
        .isCloseTo(0.0528125, offset(1e-9));
  }

  /** Half C times V squared, 2 J: written out by hand. */
  @ParameterizedTest
  @CsvSource({
    // nominal V, uF, joule, beyond
    "24, 4700, 1.3536, false",
    "40, 2200, 1.76, false",
    "52, 1479, 1.9996, false",
    "24, 7000, 2.016, true",
    "40, 2600, 2.08, true",
    "52, 1500, 2.028, true",
    "12, 22000, 1.584, false",
  })
  void theDomainEndsAtTwoJoule(double volts, double uF, double joule, boolean beyond)
      throws SheetException {
    String supply = "\"nominalV\":" + volts + ",\"capacitanceUf\":" + uF;
    assertThat(Surge.joule(sheet(supply))).isCloseTo(joule, offset(5e-4));
    assertThat(Surge.warning(sheet(supply)) != null).isEqualTo(beyond);
    assertThat(Surge.refusal(sheet(supply))).as("the look measures it").isNull();
    assertThat(Surge.refusal(sheet(supply + ",\"look\":false")) != null).isEqualTo(beyond);
    assertThat(Surge.refusal(sheet(supply + ",\"look\":false,\"through\":\"lamp\""))).isNull();
  }

  @Test
  void saysWhatIsTooMuchAndWhatToDo() throws SheetException {
    assertThat(
            Surge.refusal(sheet("\"nominalV\":24,\"capacitanceUf\":10000,\"look\":false"))
                .english())
        .isEqualTo(
            "Empty, the capacitors of this set (10000 uF) take 2.88 J at 24 V when the switch"
                + " closes; the limiter of the probe box bears 2 J. Not switched on: without the"
                + " first look they are not charged beforehand. Take \"look\":false off the sheet,"
                + " or charge the set through a lamp first and write \"through\":\"lamp\" for"
                + " that.");
    assertThat(
            SheetWarnings.of(
                Defaults.fill(sheet("\"nominalV\":24,\"limitA\":10,\"capacitanceUf\":10000"))))
        .anySatisfy(
            text -> assertThat(text.english()).contains("2.88 J").contains("through a lamp first"));
    assertThat(Surge.warning(sheet("\"nominalV\":24"))).as("nothing is known").isNull();
  }

  /**
   * The limiter holds 13.8 A (studied circuit, simulated at 27 C), so nothing can show more for
   * long: I2t is the peak times half the charge, 13.8 A x 1000 uF x 24 V / 2 = 0.1656 A2s.
   */
  @Test
  void theForecastEndsAtWhatTheLimiterHolds() throws SheetException {
    SurgeForecast forecast = SurgeForecast.of(sheet("\"nominalV\":24,\"capacitanceUf\":1000"), 1.0);
    assertThat(forecast.peakA()).isCloseTo(13.8, offset(1e-9));
    assertThat(forecast.heatA2s()).isCloseTo(0.1656, offset(1e-6));
    // 24 V through the 0.6 ohm of an adaptor and the probe: 40 A without a limiter; 5 V: 8.33 A.
    assertThat(
            SurgeForecast.of(
                    sheet("\"nominalV\":5,\"kind\":\"adaptor\",\"capacitanceUf\":10000"), 1.0)
                .peakA())
        .isCloseTo(8.333, offset(1e-3));
  }

  @Test
  void theSurgeLimitLastsAtMostTwoHundredMillisecondsAndTooShortIsSaid() throws SheetException {
    var sheet =
        SheetReader.parse(
                "s",
                "{\"set\":{\"name\":\"S\"},\"supply\":{\"nominalV\":24,\"limitA\":0.1,\"fuseA\":1,\"capacitanceUf\":4700}}")
            .sheet();
    assertThat(Defaults.fill(sheet).limits().inrushMs()).isEqualTo(200);
    // t = C V / I: 4700 uF, 24 V, 100 mA less half of it for the set take 2.256 s, and a quarter
    // more
    // for the rest.
    assertThat(SheetWarnings.of(sheet))
        .extracting(Worded::english)
        .containsExactly(
            "limits.inrushMs 200 ms is shorter than the 2820 ms that the capacitors need to charge"
                + " at 100 mA with what the set draws: a healthy set may be switched off. Raise the limit of the supply, or"
                + " charge them through a lamp or a resistor first.");
  }

  @Test
  void tooShortASurgeTimeIsSaid() throws SheetException {
    // 1.25 * 4700 uF * 24 V / (2 A - 2/3 * 0.5 A) = 84.6 ms.
    String sheet =
        "{\"set\":{\"name\":\"S\"},\"supply\":{\"nominalV\":24,\"limitA\":2,\"capacitanceUf\":4700},"
            + "\"limits\":{\"inrushA\":3,\"inrushMs\":%s,\"runningA\":0.5}}";
    assertThat(SheetWarnings.of(Defaults.fill(SheetReader.parse("s", sheet.formatted(84)).sheet())))
        .anyMatch(
            text -> text.english().startsWith("limits.inrushMs 84 ms is shorter than the 84.6 ms"));
    assertThat(SheetWarnings.of(Defaults.fill(SheetReader.parse("s", sheet.formatted(85)).sheet())))
        .noneMatch(text -> text.english().startsWith("limits.inrushMs"));
  }
}
