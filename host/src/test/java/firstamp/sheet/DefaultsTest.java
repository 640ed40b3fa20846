package firstamp.sheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import firstamp.model.Calibration;
import firstamp.model.JobSheet;
import firstamp.model.LimitException;
import firstamp.model.NotWatched;
import org.junit.jupiter.api.Test;

class DefaultsTest {
  private static JobSheet fill(String more) throws SheetException {
    return Defaults.fill(SheetReader.parse("s.json", Sheets.minimal(more)).sheet());
  }

  private static JobSheet ofSupply(String supply) throws SheetException {
    return Defaults.fill(
        SheetReader.parse(
                "s.json",
                "{\"set\":{\"name\":\"Set\"},\"supply\":{\"nominalV\":12," + supply + "}}")
            .sheet());
  }

  @Test
  void fillsWhatWasNotSaid() throws SheetException {
    JobSheet sheet = fill(",\"rails\":[{\"input\":2,\"nominalV\":-9}],\"levels\":{}");
    assertThat(sheet.supply().look()).isTrue();
    assertThat(sheet.supply().minV()).isEqualTo(10.2);
    assertThat(sheet.supply().maxV()).isEqualTo(13.799999999999999);
    assertThat(sheet.rail(2).tolerancePercent()).isEqualTo(10);
    assertThat(sheet.rail(2).settleMs()).isEqualTo(500);
    assertThat(sheet.levels().marginDb()).isEqualTo(6);
    assertThat(sheet.levels().fromMs()).isEqualTo(1500);
    assertThat(sheet.rules().get("no-draw").numbers())
        .containsEntry("belowA", 0.002)
        .containsEntry("afterMs", 500.0);
    assertThat(sheet.rules().get("short").numbers()).containsEntry("belowOhm", 2.5);
    assertThat(sheet.rules().get("short").onDelayMs()).isEqualTo(100);
    assertThat(sheet.rules().get("short").action()).isEqualTo("off");
    assertThat(sheet.rules().get("rail-window").action()).isEqualTo("alarm");
  }

  @Test
  void takesCurrentLimitsFromTheFirstThatIsKnownAndStaysUnderTheFuse() throws SheetException {
    assertThat(fill("").limits().runningA()).isNull();
    assertThat(fill("").limits().inrushA()).isNull();
    JobSheet fused = ofSupply("\"fuseA\":2");
    assertThat(fused.limits().runningA()).isEqualTo(1.6);
    assertThat(fused.limits().inrushA()).isEqualTo(2);
    assertThat(fused.limits().i2tA2s()).isEqualTo(1.2);
    assertThat(ofSupply("\"idleA\":0.1").limits().runningA()).isEqualTo(0.15000000000000002);
    assertThat(ofSupply("\"idleA\":5,\"fuseA\":1").limits().runningA()).isEqualTo(0.8);
    assertThat(ofSupply("\"labelW\":6").limits().runningA()).isEqualTo(0.6);
  }

  @Test
  void everyFilledSheetCanBeReadAgainAndWatched() throws Exception {
    for (double fuse : new double[] {0.01, 0.032, 0.1, 1, 8, 16, 63}) {
      for (String kind : new String[] {"bench", "battery", "adaptor", "mains-transformer"}) {
        JobSheet filled = ofSupply("\"kind\":\"" + kind + "\",\"fuseA\":" + fuse);
        assertThat(filled.limits().inrushA() == null || filled.limits().inrushA() <= fuse).isTrue();
        assertThat(filled.limits().runningA()).isLessThan(fuse);
        SheetCheck.of(filled, Calibration.nominal(), false);
        assertThat(SheetReader.parse("again", SheetWriter.write(filled)).sheet()).isEqualTo(filled);
      }
    }
    JobSheet faint = ofSupply("\"labelW\":0.01");
    assertThat(faint.limits().runningA()).isNull();
  }

  @Test
  void neverTouchesWhatWasSaid() throws SheetException {
    JobSheet stated = SheetReader.parse("larch.json", Sheets.DICTATION_UNIT).sheet();
    JobSheet filled = Defaults.fill(stated);
    assertThat(filled.limits()).isEqualTo(stated.limits());
    assertThat(filled.rails()).isEqualTo(stated.rails());
    assertThat(filled.levels()).isEqualTo(stated.levels());
    assertThat(SheetWarnings.of(filled))
        .containsExactly(
            "limits.inrushA 4.5 A is above supply.limitA 1.5 A.",
            "limits.inrushA 4.5 A is above supply.fuseA 1 A.");
  }

  @Test
  void checkSaysRangeSpeedAndWhoDecides() throws Exception {
    JobSheet sheet =
        fill(",\"limits\":{\"runningA\":0.03},\"rails\":[{\"input\":1,\"nominalV\":8}]");
    SheetCheck check = SheetCheck.of(sheet, Calibration.nominal(), false);
    assertThat(check.watched())
        .anySatisfy(
            one -> {
              assertThat(one.by()).isEqualTo("probe");
              assertThat(one.on()).isEqualTo("J");
              assertThat(one.withinMs()).isEqualTo(4.1);
              assertThat(one.text())
                  .isEqualTo(
                      "The probe switches off by itself above 29.7 mA (the sheet says 30 mA),"
                          + " limits.runningA, on the fine current range (J), within 4.1 ms.");
            });
    assertThat(check.watched())
        .anySatisfy(
            one ->
                assertThat(one.text())
                    .isEqualTo(
                        "The computer raises an alarm when rail 1 is outside 7.2 to 8.8 V, from 500"
                            + " ms after switching on, within 110 ms."));
    assertThat(CheckWords.line(new NotWatched("current-creep", "overAPerMin is not on the sheet")))
        .isEqualTo("a current that climbs: overAPerMin is not on the sheet");
    assertThat(CheckWords.line(new NotWatched("ripple 1", "turned off on the sheet")))
        .isEqualTo("too much ripple (rail 1): turned off on the sheet");
    for (firstamp.model.RuleId rule : firstamp.model.RuleId.values()) {
      assertThat(CheckWords.line(new NotWatched(rule.id(), "x")))
          .as("words of %s", rule.id())
          .doesNotStartWith(rule.id() + ":");
    }
    assertThat(check.notWatched())
        .contains(
            new NotWatched("surge heat", "not on the sheet"),
            new NotWatched("rail 2", "not on the sheet"),
            new NotWatched("current-creep", "overAPerMin is not on the sheet"));
  }

  @Test
  void aLimitFinerThanTheRangeIsNamedWithItsPlace() throws Exception {
    SheetDocument document =
        SheetReader.parse("s.json", Sheets.minimal(",\"limits\":{\"runningA\":0.0012}"));
    LimitException problem =
        catchThrowableOfType(
            LimitException.class,
            () -> SheetCheck.of(Defaults.fill(document.sheet()), Calibration.nominal(), false));
    SheetException located = document.locate(problem);
    assertThat(located.getMessage())
        .isEqualTo(
            "s.json, line 2, column 48: limits.runningA is 0.0012, expected 0.0016 to 12.4 A."
                + " Write a larger value, or leave the field out.");
  }
}
