package firstamp.sheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import firstamp.model.JobSheet;
import firstamp.model.NotWatched;
import firstamp.model.limits.LimitException;
import firstamp.model.samples.Calibration;
import firstamp.model.text.Worded;
import java.util.List;
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
  void takesTheRunningLimitFromTheFirstThatIsKnown() throws SheetException {
    assertThat(fill("").limits().runningA()).as("nothing known").isEqualTo(1);
    assertThat(ofSupply("\"limitA\":0.4").limits().runningA()).isEqualTo(0.4);
    assertThat(ofSupply("\"limitA\":40").limits().runningA()).as("the switch").isEqualTo(8);
    assertThat(ofSupply("\"fuseA\":2").limits().runningA()).isEqualTo(1.6);
    assertThat(ofSupply("\"fuseA\":2,\"limitA\":0.5").limits().runningA()).isEqualTo(0.5);
    assertThat(ofSupply("\"idleA\":0.1").limits().runningA()).isEqualTo(0.15000000000000002);
    assertThat(ofSupply("\"idleA\":5,\"fuseA\":1").limits().runningA()).isEqualTo(0.8);
    assertThat(ofSupply("\"labelW\":6").limits().runningA()).isEqualTo(0.6);
    assertThat(ofSupply("\"labelW\":0.01").limits().runningA()).as("finest").isEqualTo(0.002);
  }

  /**
   * Worked by hand for 12 V, 3100 uF: Q = CV = 37.2 mC. A supply that limits at 1.5 A gives it as a
   * plateau, 1.5 * 0.0372 = 0.0558 A2s, and 1000 uF across its output at most what the limiter
   * holds: 13.8 * 0.012 / 2 = 0.0828 A2s; twice the sum is 0.2772. Without a limit 13.8 * 0.0372 /
   * 2 * 2 = 0.51336. With a fuse of 1 A and unknown capacitors half of its square.
   */
  @Test
  void theBudgetIsTwiceTheSurgeThatIsForetold() throws SheetException {
    JobSheet limited = ofSupply("\"limitA\":1.5,\"capacitanceUf\":3100");
    assertThat(limited.limits().i2tA2s()).isCloseTo(0.2772, within(1e-9));
    // 3 * 37.2 mC / 1.5 A = 74.4 ms, up to the next one.
    assertThat(limited.limits().inrushMs()).isEqualTo(75);
    assertThat(ofSupply("\"capacitanceUf\":3100").limits().i2tA2s())
        .isCloseTo(0.51336, within(1e-9));
    assertThat(ofSupply("\"fuseA\":1").limits().i2tA2s()).isCloseTo(0.5, within(1e-9));
    // And never more than the largest surge that the switch is for: 2 J at 12 V are 0.333 C, 13.8
    // A.
    assertThat(ofSupply("\"fuseA\":5").limits().i2tA2s()).isCloseTo(4.6, within(1e-9));
    // 10 uF at 12 V: 0.12 mC cannot hold three conversions above 0.24 A; 4 times 0.6 A is more.
    assertThat(ofSupply("\"labelW\":6,\"capacitanceUf\":10").limits().inrushA())
        .isCloseTo(2.4, within(1e-9));
    assertThat(ofSupply("\"labelW\":0.6,\"capacitanceUf\":47").limits().inrushA())
        .isCloseTo(1.25 * 47e-6 * 12 / 0.5e-3, within(1e-9));
  }

  @Test
  void theSurgeLimitFollowsTheSetAndNotTheFuse() throws SheetException {
    JobSheet sheet = ofSupply("\"fuseA\":1,\"limitA\":1.5");
    assertThat(sheet.limits().inrushA()).isEqualTo(12);
    assertThat(SheetWarnings.of(sheet)).isEmpty();
  }

  @Test
  void everySheetEndsLow() throws Exception {
    for (String supply :
        new String[] {
          "\"look\":true",
          "\"capacitanceUf\":1000000",
          "\"limitA\":0.001,\"capacitanceUf\":10000",
          "\"kind\":\"battery\"",
          "\"kind\":\"mains-transformer\"",
          "\"through\":\"lamp\"",
          "\"fuseA\":63",
          "\"labelW\":2000",
          "\"idleA\":0.0005"
        }) {
      JobSheet.Limits limits = ofSupply(supply).limits();
      assertThat(limits.runningA()).as(supply).isBetween(0.002, 8.0);
      assertThat(limits.inrushMs()).as(supply).isBetween(60.0, 200.0);
      assertThat(limits.i2tA2s()).as(supply).isBetween(0.02, 50.0);
      assertThat(limits.inrushA()).as(supply).isBetween(0.1, 12.0);
      SheetCheck.of(ofSupply(supply), Calibration.nominal(), false);
    }
  }

  @Test
  void aLongerTimeForTheSurgeIsCutAndSaid() throws Exception {
    JobSheet stated =
        SheetReader.parse("s.json", Sheets.minimal(",\"limits\":{\"inrushMs\":1000}")).sheet();
    assertThat(Defaults.fill(stated).limits().inrushMs()).isEqualTo(200);
    assertThat(english(SheetWarnings.of(stated)))
        .contains(
            "limits.inrushMs is 1000 ms on the sheet and acts for 200 ms: it is the time for"
                + " charging capacitors, not for starting a motor. After it the running limit"
                + " acts.");
  }

  @Test
  void warnsOfWhatTheFuseOrTheSupplyDoesNotStand() throws Exception {
    JobSheet wide =
        SheetReader.parse(
                "s.json",
                "{\"set\":{\"name\":\"S\"},\"supply\":{\"nominalV\":12,\"fuseA\":1,\"limitA\":1.2},"
                    + "\"limits\":{\"inrushA\":8,\"runningA\":1.5,\"i2tA2s\":0.6}}")
            .sheet();
    assertThat(english(SheetWarnings.of(wide)))
        .containsExactly(
            "limits.runningA 1.5 A is above supply.limitA 1.2 A.",
            "limits.runningA 1.5 A is above supply.fuseA 1 A.",
            "limits.i2tA2s 0.6 A2s is more than a quick-acting fuse of 1 A withstands: it may blow"
                + " before the probe switches off.");
    assertThat(english(SheetWarnings.of(fill(""))))
        .as("a filled sheet states its limit")
        .noneMatch(text -> text.contains("loose"));
    assertThat(english(SheetWarnings.of(SheetReader.parse("s.json", Sheets.minimal("")).sheet())))
        .contains(
            "The running limit of 1 A is loose: nothing on the sheet shows what the set draws."
                + " Write its fuse, the watts on its label or its known current.");
  }

  @Test
  void aSheetThatWasKeptIsNotGivenNewLimits() throws SheetException {
    JobSheet old = SheetReader.parse("s.json", Sheets.minimal("")).sheet();
    assertThat(Defaults.refill(old).limits()).isNull();
    assertThat(Defaults.refill(old).supply()).isEqualTo(Defaults.fill(old).supply());
  }

  @Test
  void everyFilledSheetCanBeReadAgainAndWatched() throws Exception {
    for (double fuse : new double[] {0.01, 0.032, 0.1, 1, 8, 16, 63}) {
      for (String kind : new String[] {"bench", "battery", "adaptor", "mains-transformer"}) {
        JobSheet filled = ofSupply("\"kind\":\"" + kind + "\",\"fuseA\":" + fuse);
        assertThat(filled.limits().runningA()).isLessThan(fuse);
        SheetCheck.of(filled, Calibration.nominal(), false);
        assertThat(SheetReader.parse("again", SheetWriter.write(filled)).sheet()).isEqualTo(filled);
      }
    }
  }

  @Test
  void neverTouchesWhatWasSaid() throws SheetException {
    JobSheet stated = SheetReader.parse("larch.json", Sheets.DICTATION_UNIT).sheet();
    JobSheet filled = Defaults.fill(stated);
    assertThat(filled.limits()).isEqualTo(stated.limits());
    assertThat(filled.rails()).isEqualTo(stated.rails());
    assertThat(filled.levels()).isEqualTo(stated.levels());
    assertThat(SheetWarnings.of(stated)).isEmpty();
  }

  @Test
  void checkSaysRangeSpeedAndWhoDecides() throws Exception {
    JobSheet sheet =
        SheetReader.parse(
                "s.json",
                Sheets.minimal(
                    ",\"limits\":{\"runningA\":0.03},\"rails\":[{\"input\":1,\"nominalV\":8}]"))
            .sheet();
    SheetCheck check = SheetCheck.of(sheet, Calibration.nominal(), false);
    assertThat(check.watched())
        .anySatisfy(
            one -> {
              assertThat(one.by()).isEqualTo("probe");
              assertThat(one.on()).isEqualTo("J");
              assertThat(one.withinMs()).isEqualTo(4.1);
              assertThat(one.text().english())
                  .isEqualTo(
                      "limits.runningA: 30 mA on the sheet, acts at 29.7 mA, from 200 ms after"
                          + " closing on. The probe switches off by itself, on the fine current"
                          + " range (J), within 4.1 ms.");
            });
    assertThat(check.watched())
        .anySatisfy(
            one ->
                assertThat(one.text().english())
                    .isEqualTo(
                        "The computer raises an alarm when rail 1 is outside 7.2 to 8.8 V, from 500"
                            + " ms after switching on, within 110 ms."));
    assertThat(
            CheckWords.line(new NotWatched("current-creep", "turned off on the sheet")).english())
        .isEqualTo("a current that climbs: turned off on the sheet");
    assertThat(CheckWords.line(new NotWatched("ripple 1", "turned off on the sheet")).english())
        .isEqualTo("too much ripple (rail 1): turned off on the sheet");
    for (firstamp.model.RuleId rule : firstamp.model.RuleId.values()) {
      assertThat(CheckWords.line(new NotWatched(rule.id(), "x")).english())
          .as("words of %s", rule.id())
          .doesNotStartWith(rule.id() + ":");
    }
    assertThat(check.notWatched()).contains(new NotWatched("rail 2", "not on the sheet"));
    assertThat(check.watched())
        .anySatisfy(
            one ->
                assertThat(one.text().english())
                    .contains(
                        "when the current climbs by more than a quarter of itself and 5 mA a"
                            + " minute"));
  }

  /** 81 counts of 12.207 mA are 0.989 A, 983 are 11.9995 A. */
  @Test
  void checkSaysWhatActsOfAStatedLimitAndOfADefault() throws Exception {
    JobSheet sheet =
        SheetReader.parse("s.json", Sheets.minimal(",\"limits\":{\"runningA\":1}")).sheet();
    assertThat(SheetCheck.of(sheet, Calibration.nominal(), false).watched())
        .extracting(one -> one.text().english())
        .contains(
            "limits.runningA: 1 A on the sheet, acts at 0.989 A, from 63 ms after closing on. The"
                + " probe switches off by itself, on the coarse current range (I), within 0.83 ms.",
            "limits.inrushA: 12 A by default, until 63 ms after closing. The probe switches off by"
                + " itself, on the coarse current range (I), within 0.83 ms.",
            "supply.maxV: 13.8 V by default. The probe switches off by itself, on the supply volts"
                + " (V), within 6.1 ms.");
  }

  @Test
  void aLimitFinerThanTheRangeIsNamedWithItsPlace() throws Exception {
    SheetDocument document =
        SheetReader.parse("s.json", Sheets.minimal(",\"limits\":{\"runningA\":0.0012}"));
    LimitException problem =
        catchThrowableOfType(
            LimitException.class,
            () -> SheetCheck.of(document.sheet(), Calibration.nominal(), false));
    SheetException located = document.locate(problem);
    assertThat(located.getMessage())
        .isEqualTo(
            "s.json, line 2, column 48: limits.runningA is 0.0012, expected 0.0016 to 12.4 A."
                + " Write a larger value, or leave the field out.");
  }

  private static List<String> english(List<Worded> warnings) {
    return warnings.stream().map(Worded::english).toList();
  }
}
