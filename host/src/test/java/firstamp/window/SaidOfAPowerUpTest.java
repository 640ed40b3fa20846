package firstamp.window;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.app.Desk;
import firstamp.app.QuestionFlow;
import firstamp.app.Watched;
import firstamp.app.WindowOptions;
import firstamp.bench.Snapshot;
import firstamp.model.LimitKind;
import firstamp.run.LimitMove;
import firstamp.sheet.SheetQuestion;
import firstamp.window.pages.VerdictPage;
import firstamp.window.present.BenchPresenter;
import firstamp.window.present.QuestionsPresenter;
import firstamp.window.present.WhatIfPresenter;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import javax.swing.JTextArea;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** What the window says of whole power-ups of the practice sets, from the sheet to the result. */
@NeedsDisplay
@Timeout(value = 120, unit = TimeUnit.SECONDS)
class SaidOfAPowerUpTest {
  private static final WindowOptions OPTIONS =
      new WindowOptions(WindowOptions.Theme.LIGHT, Locale.ENGLISH, false);

  @TempDir Path folder;
  private Desk desk;

  @BeforeEach
  void desk() {
    desk = TestBench.empty(folder);
  }

  /** The lines of the result page, most important first. */
  private List<String> result(long number) throws Exception {
    return Components.onSwing(
        () -> {
          VerdictPage page = new VerdictPage(Views.tools(OPTIONS, desk), desk.log(), (int) number);
          page.shown();
          JTextArea lines = (JTextArea) Components.named(page.component(), "verdict-lines");
          return lines.getText().lines().toList();
        });
  }

  @Test
  void aShortIsCalledAShortFirstWithItsHighestCurrent() throws Exception {
    TestBench.run(desk.log(), "wire-short", "W3 went to P7", true);
    List<String> lines = result(1);
    assertThat(lines.get(0))
        .startsWith("A short, at most ")
        .contains("\u03a9: it switched itself off after 1.2 s. Highest current 7.")
        .endsWith("then measure the ohms with the supply off.");
    assertThat(lines.subList(1, lines.size())).noneMatch(line -> line.contains("Highest"));
  }

  @Test
  void aHealthySetIsSaidToBeOneFirstAndGetsNoAdvice() throws Exception {
    TestBench.run(desk.log(), "healthy", null, true);
    List<String> lines = result(1);
    assertThat(lines.get(0)).isEqualTo("Ran 0:02, no fault seen.");
    assertThat(lines)
        .noneMatch(line -> line.matches("(?i).*(hum|watch the|look |filter|measure).*"));
  }

  @Test
  void aLevelIsComparedInDbv() throws Exception {
    TestBench.run(desk.log(), "healthy", null, true);
    TestBench.run(desk.log(), "lost-head", null, true);
    assertThat(result(2))
        .anyMatch(line -> line.matches(".*Head: \u221257\\.. dBV, now \u2212\\d+\\.. dBV"))
        .anyMatch(line -> line.matches(".*Head below meter: 39\\.. dB, now \\d+\\.. dB"));
  }

  @Test
  void aPowerUpOfAMomentIsNoMeasureOfAnInrush() throws Exception {
    String sheet =
        """
        {"sheet":1,"set":{"name":"Larch D2 dictation unit (invented)","kind":"recorder",
         "chassis":"negative"},"supply":{"kind":"bench","nominalV":12,"limitA":1.5,"fuseA":1},
         "limits":{"inrushA":INRUSH,"inrushMs":60,"runningA":1.0,"i2tA2s":0.3}}
        """;
    TestBench.run(desk.log(), "healthy", sheet.replace("INRUSH", "0.5"), null, true);
    TestBench.run(desk.log(), "healthy", sheet.replace("INRUSH", "4.5"), null, true);
    assertThat(desk.showing(desk.log(), 1).study().summary().onMs())
        .as("the first tripped at once")
        .isLessThan(5);
    assertThat(result(2)).noneMatch(line -> line.contains("Inrush") && line.contains(", now "));
  }

  private static List<String> wouldHave(Snapshot now) {
    BenchPresenter presenter = new BenchPresenter(Locale.ENGLISH);
    WhatIfPresenter.Sides sides =
        new WhatIfPresenter(presenter.words(), presenter.numbers()).sides(now);
    return sides == null ? List.of() : sides.right();
  }

  @Test
  void aTighterLimitThatWouldHaveSwitchedOffRaisesItsAlarm() throws Exception {
    TestBench.run(desk.log(), "healthy", null, true);
    Watched replay = desk.replay(desk.log(), 1);
    replay.session().limit(new LimitMove(LimitKind.RUNNING_A, 0, 0.1));
    List<String> would = wouldHave(replay.session().snapshot());
    for (int round = 0;
        round < 1000 && would.stream().noneMatch(line -> line.matches("(?i).*\\b(off|alarm)\\b.*"));
        round++) {
      Thread.sleep(20);
      would = wouldHave(replay.session().snapshot());
    }
    replay.end();
    assertThat(would).anyMatch(line -> line.startsWith("Off after "));
    assertThat(would)
        .anyMatch(line -> line.contains("Too much current") && !line.startsWith("Off after "))
        .noneMatch(line -> line.startsWith("No alarm"));
  }

  private static void answerTheRest(QuestionFlow flow) {
    while (flow.question() != null) {
      flow.answer(flow.question() == SheetQuestion.SUPPLY_LIMIT ? "1.5" : "");
    }
  }

  @Test
  void theLimitOfTheSupplyIsRepeatedAsItWasTyped() {
    QuestionFlow flow = new QuestionFlow(null);
    for (String answer : List.of("Tervane reel recorder (invented)", "12", "negative", "bench")) {
      flow.answer(answer);
    }
    answerTheRest(flow);
    flow.more();
    answerTheRest(flow);
    BenchPresenter presenter = new BenchPresenter(Locale.ENGLISH);
    assertThat(new QuestionsPresenter(presenter.words(), presenter.numbers()).summary(flow.form()))
        .contains("your bench supply: 1.50 A");
  }
}
