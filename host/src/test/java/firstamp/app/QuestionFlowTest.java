package firstamp.app;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.sheet.SheetQuestion;
import firstamp.window.present.QuestionsPresenter;
import firstamp.window.words.Numbers;
import firstamp.window.words.Words;
import java.util.Locale;
import org.junit.jupiter.api.Test;

class QuestionFlowTest {
  private final QuestionsPresenter presenter =
      new QuestionsPresenter(new Words(Locale.ENGLISH), new Numbers(Locale.ENGLISH));

  private static QuestionFlow answered(String... answers) {
    QuestionFlow flow = new QuestionFlow(null);
    for (String answer : answers) {
      assertThat(flow.answer(answer)).as(answer).isTrue();
    }
    return flow;
  }

  @Test
  void asksTheFiveInTheirOrderAndThenNothingMore() {
    QuestionFlow flow = new QuestionFlow(null);
    assertThat(flow.question()).isEqualTo(SheetQuestion.WHAT);
    flow.answer("Tervane amplifier");
    assertThat(flow.question()).isEqualTo(SheetQuestion.VOLTS);
    flow.answer("24");
    assertThat(flow.question()).isEqualTo(SheetQuestion.CHASSIS);
    flow.answer("negative");
    assertThat(flow.question()).isEqualTo(SheetQuestion.FEED);
    flow.answer("battery");
    assertThat(flow.question()).isEqualTo(SheetQuestion.FUSE);
    assertThat(presenter.step(flow)).contains("5 of 5");
    flow.answer("0.5");
    assertThat(flow.question()).isNull();
    assertThat(flow.sheetJson()).contains("Tervane amplifier").contains("\"nominalV\" : 24");
  }

  @Test
  void takesADecimalCommaAndKeepsTheCommaOfAName() {
    QuestionFlow flow = answered("Radio, the small one", "4,5");
    assertThat(flow.name()).isEqualTo("Radio, the small one");
    assertThat(flow.form().answer(SheetQuestion.VOLTS)).isEqualTo("4.5");
  }

  @Test
  void goesOnWhereItWasLeft() {
    QuestionFlow left = answered("Tervane amplifier", "24");
    QuestionFlow again = new QuestionFlow(left.begun());
    assertThat(again.question()).isEqualTo(SheetQuestion.CHASSIS);
    assertThat(again.name()).isEqualTo("Tervane amplifier");
    assertThat(again.answered()).isEqualTo(2);
    assertThat(again.back()).isTrue();
    assertThat(again.question()).isEqualTo(SheetQuestion.VOLTS);
  }

  @Test
  void keepsThatSomethingIsNotKnown() {
    QuestionFlow again = new QuestionFlow(answered("Tervane amplifier", "").begun());
    assertThat(again.question()).isEqualTo(SheetQuestion.CHASSIS);
    assertThat(again.form().costs()).isNotEmpty();
  }

  @Test
  void aDamagedBeginIsBegunAnew() {
    assertThat(new QuestionFlow("{\"answers\":").question()).isEqualTo(SheetQuestion.WHAT);
    assertThat(new QuestionFlow("{\"answers\":{\"volts\":\"900\"}}").question())
        .isEqualTo(SheetQuestion.WHAT);
  }

  @Test
  void refusesWhatTheProbeBoxMustNotTouchAndSaysWhy() {
    QuestionFlow volts = answered("Valve set");
    assertThat(volts.answer("240")).isFalse();
    assertThat(volts.question()).isEqualTo(SheetQuestion.VOLTS);
    assertThat(presenter.problem(volts)).contains("up to 60 V");
    QuestionFlow feed = answered("Valve set", "24", "negative");
    assertThat(feed.answer("mains-direct")).isFalse();
    assertThat(presenter.problem(feed)).contains("live chassis");
    QuestionFlow number = answered("Set");
    assertThat(number.answer("twelve")).isFalse();
    assertThat(presenter.problem(number)).contains("twelve").contains(" V ");
  }

  @Test
  void asksMoreOnlyWhenWantedAndEndsWhenNothingMoreIsUseful() {
    QuestionFlow flow = answered("Tervane amplifier", "24", "negative", "battery", "");
    flow.more();
    int asked = 0;
    while (flow.question() != null && asked < 20) {
      assertThat(flow.question().first()).isFalse();
      flow.answer("");
      asked++;
    }
    assertThat(asked).isBetween(3, 12);
  }

  @Test
  void saysWhatFollowsAndWhatItCosts() {
    QuestionFlow flow = answered("Tervane amplifier", "24", "negative", "bench", "");
    assertThat(presenter.summary(flow.form()))
        .contains("bench supply")
        .contains("running limit: 1.00 A (nothing is known yet: loose)")
        .contains("The running limit of 1 A is loose");
    QuestionFlow fused = answered("Tervane amplifier", "24", "negative", "bench", "0.5");
    assertThat(presenter.summary(fused.form()))
        .contains("running limit: 400 mA")
        .doesNotContain("is loose");
  }
}
