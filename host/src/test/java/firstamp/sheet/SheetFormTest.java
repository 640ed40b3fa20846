package firstamp.sheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import firstamp.model.JobSheet;
import firstamp.model.samples.Calibration;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SheetFormTest {
  private static SheetForm form(String what, String volts, String chassis, String feed)
      throws AnswerRefused {
    return SheetForm.empty()
        .answered(SheetQuestion.WHAT, what)
        .answered(SheetQuestion.VOLTS, volts)
        .answered(SheetQuestion.CHASSIS, chassis)
        .answered(SheetQuestion.FEED, feed);
  }

  private static double limit(SheetForm form, String field) {
    return form.suggestedLimits().stream()
        .filter(one -> one.field().equals(field))
        .findFirst()
        .orElseThrow()
        .value();
  }

  @Test
  void asksExactlyFiveQuestionsTheFuseAmongThem() throws AnswerRefused {
    SheetForm form = SheetForm.empty();
    assertThat(form.stillToAsk())
        .containsExactly(
            SheetQuestion.WHAT,
            SheetQuestion.VOLTS,
            SheetQuestion.CHASSIS,
            SheetQuestion.FEED,
            SheetQuestion.FUSE);
    assertThat(form.answered(SheetQuestion.VOLTS, "9 V").stillToAsk())
        .containsExactly(
            SheetQuestion.WHAT, SheetQuestion.CHASSIS, SheetQuestion.FEED, SheetQuestion.FUSE);
    assertThat(SheetQuestion.firstCount()).isEqualTo(5);
  }

  @Test
  void fourAnswersMakeASheetThatCanBeReadAndWatched() throws Exception {
    SheetForm form = form("pocket radio", "9", "plus", "battery");
    String text = SheetWriter.write(form.sheet());
    JobSheet read = SheetReader.parse("new.json", text).sheet();
    assertThat(read).isEqualTo(form.sheet());
    assertThat(read.set().kind()).as("the name says so").isEqualTo("receiver");
    assertThat(read.set().chassis()).isEqualTo("positive");
    assertThat(read.supply().nominalV()).isEqualTo(9);
    assertThat(read.limits()).as("limits follow, they are not frozen").isNull();
    // 3 x 30 mA: trade practice for a pocket radio, no source.
    assertThat(limit(form, "limits.runningA")).isEqualTo(0.09);
    assertThat(SheetCheck.of(Defaults.fill(read), Calibration.nominal(), false).watched())
        .anyMatch(one -> one.rule().equals("over-current") && one.by().equals("probe"));
  }

  @Test
  void everyAnswerMayBeUnknownAndEachSaysWhatThatCosts() throws Exception {
    SheetForm form = form("?", "don't know", "?", "?").answered(SheetQuestion.FUSE, "?");
    for (SheetQuestion question : form.alsoUseful()) {
      form = form.answered(question, "?");
    }
    assertThat(form.stillToAsk()).isEmpty();
    for (SheetQuestion question : SheetQuestion.values()) {
      if (question.first()) {
        assertThat(form.cost(question)).as(question.id()).isNotNull();
      }
    }
    assertThat(form.costs())
        .anyMatch(cost -> cost.english().startsWith("The running limit of 1 A is loose"));
    assertThat(form.costs())
        .noneMatch(cost -> cost.english().startsWith("The running limit comes from"));
    assertThat(form.costs()).anyMatch(cost -> cost.english().startsWith("No unattended running"));
    JobSheet sheet = form.sheet();
    assertThat(sheet.supply().nominalV()).as("the lowest usual").isEqualTo(6);
    assertThat(Defaults.fill(sheet).supply().maxV()).isCloseTo(6.9, within());
    SheetReader.parse("s", SheetWriter.write(sheet));
  }

  private static org.assertj.core.data.Offset<Double> within() {
    return org.assertj.core.data.Offset.offset(1e-9);
  }

  @Test
  void whatIsKnownCostsNothing() throws AnswerRefused {
    SheetForm form =
        form("reel recorder", "24", "negative", "bench")
            .answered(SheetQuestion.FUSE, "1")
            .answered(SheetQuestion.SUPPLY_LIMIT, "1.5")
            .answered(SheetQuestion.IDLE, "180 mA")
            .answered(SheetQuestion.CAPACITANCE, "4700");
    assertThat(form.costs()).isEmpty();
    assertThat(form.sheet().supply().idleA()).isEqualTo(0.18);
    // A motor is suggested for a recorder: 2 x idle, under 0.8 x fuse.
    assertThat(limit(form, "limits.runningA")).isEqualTo(0.36);
  }

  /** Rows of the table of limits by what is known; the factors are common practice, no source. */
  @ParameterizedTest
  @CsvSource({
    "IDLE, 0.1, 0.07, 0.12, 0.15",
    "LABEL, 6, 0.125, 0.3, 0.6",
    "FUSE, 1, 0.25, 0.5, 0.8",
  })
  void limitsComeFromTheFirstLineThatIsKnown(
      SheetQuestion known, String answer, double first, double nominal, double running)
      throws AnswerRefused {
    SheetForm form = form("box", "12", "?", "bench").answered(known, answer);
    KnownCurrent current = KnownCurrent.of(form.sheet());
    assertThat(current.firstA()).isCloseTo(first, within());
    assertThat(current.nominalA()).isCloseTo(nominal, within());
    assertThat(current.runningA()).isCloseTo(running, within());
  }

  @Test
  void withNothingKnownTheSupplyStartsAtTwentyMilliampereAndALooseLimitActs() throws AnswerRefused {
    SheetForm form = form("box", "12", "negative", "bench");
    assertThat(limit(form, "limits.runningA")).isEqualTo(1);
    assertThat(limit(form, "limits.i2tA2s")).isPositive();
    assertThat(form.suggestedLimits())
        .filteredOn(one -> one.field().isEmpty())
        .singleElement()
        .satisfies(
            one -> {
              assertThat(one.value()).isEqualTo(0.02);
              assertThat(one.why().english()).contains("quarter of the volts");
            });
    assertThat(form.costs()).anyMatch(cost -> cost.english().contains("loose"));
  }

  @Test
  void theSupplysLimitThatWasGivenIsShown() throws AnswerRefused {
    SheetForm form =
        form("box", "12", "negative", "bench")
            .answered(SheetQuestion.FUSE, "1")
            .answered(SheetQuestion.SUPPLY_LIMIT, "1.5");
    assertThat(form.suggestedLimits())
        .filteredOn(one -> one.field().isEmpty())
        .extracting(SheetForm.Limit::value)
        .containsExactly(1.5, 0.25, 0.5);
  }

  @Test
  void moreAnswersNeverRaiseTheRunningLimitAboveTheFuse() throws AnswerRefused {
    SheetForm form = form("box", "12", "?", "bench").answered(SheetQuestion.FUSE, "0.5");
    double byFuse = limit(form, "limits.runningA");
    for (String idle : List.of("0.01", "0.2", "3")) {
      SheetForm more = form.answered(SheetQuestion.IDLE, idle);
      assertThat(limit(more, "limits.runningA")).isLessThanOrEqualTo(byFuse);
    }
  }

  @Test
  void mainsSetsUpToThirtyVoltAreFirstOfferedTheBenchSupplyAtTheReservoir() throws AnswerRefused {
    SheetForm low = form("amplifier", "30", "negative", "mains-transformer");
    assertThat(low.suggestion(SheetQuestion.PLACE).answer()).isEqualTo("reservoir-fed");
    assertThat(low.sheet().supply().probeSits()).isEqualTo("reservoir-fed");
    SheetForm high = form("amplifier", "31", "negative", "mains-transformer");
    assertThat(high.sheet().supply().probeSits()).isEqualTo("before-reservoir");
    SheetForm lamp = form("amplifier", "24", "negative", "lamp");
    assertThat(lamp.sheet().supply().kind()).isEqualTo("mains-transformer");
    assertThat(lamp.sheet().supply().through()).isEqualTo("lamp");
    for (SheetQuestion.Choice choice : SheetQuestion.PLACE.choices()) {
      assertThat(SheetQuestion.PLACE.words(choice, java.util.Locale.ROOT)).isNotBlank();
    }
  }

  @ParameterizedTest
  @CsvSource({"9,9", "9 V,9", "'9,5',9.5", "4500 mV,4.5"})
  void readsVoltsAsPeopleTypeThem(String typed, double volts) throws AnswerRefused {
    SheetForm form = SheetForm.empty().answered(SheetQuestion.VOLTS, typed);
    assertThat(form.sheet().supply().nominalV()).isEqualTo(volts);
  }

  @ParameterizedTest
  @CsvSource({"2200,2200", "2200 uF,2200", "2.2 mF,2200", "4700\u00b5F,4700"})
  void readsMicrofarad(String typed, double microfarad) throws AnswerRefused {
    SheetForm form = SheetForm.empty().answered(SheetQuestion.CAPACITANCE, typed);
    assertThat(form.sheet().supply().capacitanceUf()).isEqualTo(microfarad);
  }

  @Test
  void refusesWithWhatWasExpected() {
    SheetForm form = SheetForm.empty();
    assertThatThrownBy(() -> form.answered(SheetQuestion.VOLTS, "230"))
        .isInstanceOf(AnswerRefused.class)
        .hasMessageContaining("60 V");
    assertThatThrownBy(() -> form.answered(SheetQuestion.VOLTS, "nine"))
        .hasMessageContaining("0.5 to 60 V");
    assertThatThrownBy(() -> form.answered(SheetQuestion.VOLTS, "9 A"))
        .hasMessageContaining("0.5 to 60 V");
    assertThatThrownBy(() -> form.answered(SheetQuestion.VOLTS, "NaN"))
        .hasMessageContaining("0.5 to 60 V");
    assertThatThrownBy(() -> form.answered(SheetQuestion.FEED, "batery"))
        .hasMessageContaining("Did you mean \"battery\"?");
    assertThatThrownBy(() -> form.answered(SheetQuestion.FEED, "mains-direct"))
        .hasMessageContaining("live chassis");
    assertThatThrownBy(() -> form.answered(SheetQuestion.WHAT, "  "))
        .hasMessageContaining("expected a name");
  }

  @ParameterizedTest
  @CsvSource({
    "Larch D2 dictation unit,recorder",
    "pocket radio,receiver",
    "desk calculator,computer",
    "record player,amplifier",
    "radio recorder,",
    "box,",
  })
  void takesTheKindFromTheName(String name, String kind) {
    assertThat(SetKinds.of(name)).isEqualTo(kind);
  }
}
