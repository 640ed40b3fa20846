package firstamp.window;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.app.BenchSets;
import firstamp.app.Desk;
import firstamp.app.Ports;
import firstamp.app.SetEntry;
import firstamp.bench.Snapshot;
import firstamp.run.questions.OpenQuestion;
import firstamp.sheet.SheetField;
import firstamp.window.page.Tools;
import firstamp.window.pages.FormPage;
import firstamp.window.pages.QuestionsPage;
import firstamp.window.pages.ReadyPage;
import firstamp.window.pages.WatchPage;
import org.junit.jupiter.api.Test;

/** The pages from a new set to the page before the power-up, without a window around them. */
@NeedsDisplay
class FlowPagesTest extends FlowPagesCase {
  @Test
  void aNewSetGoesFromFiveAnswersToThePageBeforeThePowerUp() throws Exception {
    open(() -> new QuestionsPage(tools, null));
    on(
        () -> {
          QuestionsPage page = (QuestionsPage) shell.page();
          page.take("Snipe recorder (invented)");
          page.take("6");
          page.choose(2);
          page.choose(2);
          page.take("0.5");
          page.goOn();
          return null;
        });
    assertThat(shell.page()).isInstanceOf(ReadyPage.class);
    assertThat(desk.shelf().ready().values())
        .anyMatch(json -> json.contains("Snipe recorder") && json.contains("\"positive\""));
  }

  @Test
  void aNameThatIsTakenIsAskedForAgain() throws Exception {
    QuestionsPage page = open(() -> new QuestionsPage(tools, null));
    on(
        () -> {
          page.take("Quandel pocket radio (invented)");
          page.take("6");
          page.choose(1);
          page.choose(1);
          page.take("");
          page.goOn();
          return null;
        });
    assertThat(shell.page()).isSameAs(page);
    assertThat(page.flow().question()).isEqualTo(firstamp.sheet.SheetQuestion.WHAT);
  }

  @Test
  void leavingTheQuestionsKeepsWhatWasAnswered() throws Exception {
    QuestionsPage page = open(() -> new QuestionsPage(tools, null));
    on(
        () -> {
          page.take("Ilvor tuner (invented)");
          page.take("12");
          page.back();
          page.back();
          page.back();
          return null;
        });
    assertThat(shell.homeAsked).isTrue();
    assertThat(new BenchSets(desk).list("emulated"))
        .anyMatch(
            set ->
                set.kind() == SetEntry.Kind.BEGUN && set.name().equals("Ilvor tuner (invented)"));
  }

  @Test
  void theFormKeepsOnlyWhatCanBeWatched() throws Exception {
    String json = desk.shelf().ready().values().iterator().next();
    FormPage page = open(() -> new FormPage(tools, json));
    on(
        () -> {
          page.entries().set("supply.nominalV", SheetField.Kind.NUMBER, "90");
          page.goOn();
          return null;
        });
    assertThat(shell.page()).isSameAs(page);
    assertThat(desk.shelf().ready().values().iterator().next()).doesNotContain("90");
    on(
        () -> {
          page.entries().set("supply.nominalV", SheetField.Kind.NUMBER, "7.5");
          page.choose(1);
          page.goOn();
          return null;
        });
    assertThat(shell.page()).isInstanceOf(ReadyPage.class);
    assertThat(desk.shelf().ready().values().iterator().next()).contains("7.5");
  }

  @Test
  void changesInTheFormAreDroppedOnlyWhenAskedTwice() throws Exception {
    String json = desk.shelf().ready().values().iterator().next();
    FormPage page = open(() -> new FormPage(tools, json));
    on(
        () -> {
          page.entries().set("supply.fuseA", SheetField.Kind.NUMBER, "2");
          page.back();
          return null;
        });
    assertThat(shell.homeAsked).isFalse();
    on(
        () -> {
          page.back();
          return null;
        });
    assertThat(shell.homeAsked).isTrue();
  }

  @Test
  void aRealSetIsAskedAboutBeforeAnythingIsSwitched() throws Exception {
    String json = desk.shelf().ready().values().iterator().next();
    open(() -> new ReadyPage(tools, json));
    on(
        () -> {
          shell.page().goOn();
          return null;
        });
    assertThat(shell.page()).isInstanceOf(WatchPage.class);
    WatchPage watching = (WatchPage) shell.page();
    Snapshot now = watching.session().snapshot();
    assertThat(now.kind()).isEqualTo(Snapshot.Kind.PROBE);
    // A set that this log does not know: the whole page first; no supply question for batteries.
    assertThat(now.questions())
        .extracting(OpenQuestion::id)
        .containsExactly("cautions", "above-60", "hook-up", "speaker-off", "hands-out");
    assertThat(now.phase()).isIn(Snapshot.Phase.CONNECTING, Snapshot.Phase.OPEN);
    assertThat(desk.settings().port()).as("nobody has answered yet").isNull();
    for (int round = 0; round < 500 && desk.settings().port() == null; round++) {
      on(
          () -> {
            watching.tick(true);
            return null;
          });
      Thread.sleep(20);
    }
    watching.end();
    assertThat(desk.settings().port()).isEqualTo(TestBench.PORT);
    assertThat(desk.settings().portTyped()).isNull();
  }

  @Test
  void practiceThatWasBroughtIntoTheBenchLogIsShownAndMarked() throws Exception {
    TestBench.run(desk.log(), "lost-head", null, false);
    java.util.List<SetEntry> sets = new BenchSets(desk).list("emulated");
    assertThat(sets)
        .filteredOn(set -> set.log().equals(desk.log()) && set.kind() == SetEntry.Kind.EMULATED)
        .singleElement()
        .satisfies(set -> assertThat(set.name()).startsWith("emulated: "))
        .satisfies(set -> assertThat(set.powerUps()).hasSize(1));
    assertThat(sets.get(sets.size() - 1).name()).isEqualTo("emulated");
  }

  @Test
  void besideAFieldNoDigitIsPromised() throws Exception {
    open(() -> new QuestionsPage(tools, null));
    String said =
        on(
            () ->
                ((javax.swing.JButton)
                        Components.named(shell.page().component(), "questions.unknown"))
                    .getText());
    assertThat(said).doesNotContainPattern("[0-9]");
  }

  @Test
  void withoutAPortNothingBegins() throws Exception {
    Desk none =
        new Desk(
            folder.resolve("bench.db"),
            folder.resolve("demo.db"),
            new Ports() {
              @Override
              public java.util.List<Found> list() {
                return java.util.List.of();
              }

              @Override
              public firstamp.model.ProbePort open(String path) {
                throw new AssertionError("nothing may be opened");
              }
            },
            firstamp.model.TimeSource.system(),
            sheet -> null);
    Tools bare = on(() -> Views.tools(OPTIONS, none));
    String json = desk.shelf().ready().values().iterator().next();
    on(
        () -> {
          ReadyPage page = new ReadyPage(bare, json);
          bare.shell().open(page);
          page.goOn();
          return null;
        });
    assertThat(((StillShell) bare.shell()).page()).isInstanceOf(ReadyPage.class);
  }
}
