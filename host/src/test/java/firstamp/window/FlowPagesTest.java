package firstamp.window;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.app.BenchSets;
import firstamp.app.Desk;
import firstamp.app.Hearing;
import firstamp.app.Ports;
import firstamp.app.SetEntry;
import firstamp.app.WindowOptions;
import firstamp.bench.Snapshot;
import firstamp.run.questions.OpenQuestion;
import firstamp.sheet.SheetField;
import firstamp.window.page.Page;
import firstamp.window.page.Tools;
import firstamp.window.pages.FormPage;
import firstamp.window.pages.HomePage;
import firstamp.window.pages.LookPage;
import firstamp.window.pages.QuestionsPage;
import firstamp.window.pages.ReadyPage;
import firstamp.window.pages.VerdictPage;
import firstamp.window.pages.WatchPage;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.concurrent.Callable;
import javax.swing.JList;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The pages from one to the next, without a window around them. */
@NeedsDisplay
class FlowPagesTest {
  private static final WindowOptions OPTIONS =
      new WindowOptions(WindowOptions.Theme.LIGHT, Locale.ENGLISH, false);

  @TempDir Path folder;
  private Desk desk;
  private Tools tools;
  private StillShell shell;

  @BeforeEach
  void desk() throws Exception {
    desk = TestBench.used(folder);
    tools = on(() -> Views.tools(OPTIONS, desk));
    shell = (StillShell) tools.shell();
  }

  private static <T> T on(Callable<T> task) throws Exception {
    return Components.onSwing(task);
  }

  private <P extends Page> P open(Callable<P> maker) throws Exception {
    return on(
        () -> {
          P page = maker.call();
          shell.open(page);
          return page;
        });
  }

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

  @Test
  void theReportIsSavedOnceAndNeverOverAnotherFile() throws Exception {
    VerdictPage page = open(() -> new VerdictPage(tools, desk.log(), 2));
    Path to = desk.folder().resolve("reports/larch-d2-dictation-unit-invented-power-up-2.html");
    on(
        () -> {
          page.goOn();
          return null;
        });
    assertThat(Files.readString(to)).contains("<!DOCTYPE html>").contains("Larch D2");
    Files.writeString(to, "mine");
    on(
        () -> {
          page.goOn();
          return null;
        });
    assertThat(Files.readString(to)).isEqualTo("mine");
  }

  @Test
  void aPowerUpCanBeCalledKnownGoodAndAsFound() throws Exception {
    VerdictPage page = open(() -> new VerdictPage(tools, desk.log(), 3));
    on(
        () -> {
          page.choose(2);
          page.choose(3);
          return null;
        });
    assertThat(desk.reader(desk.log(), 3).entry().baseline()).isTrue();
    assertThat(desk.reader(desk.log(), 3).entry().asFound()).isTrue();
    on(
        () -> {
          page.choose(2);
          return null;
        });
    assertThat(desk.reader(desk.log(), 3).entry().baseline()).isFalse();
  }

  @Test
  void languageAndGroundAreKept() throws Exception {
    LookPage page = open(() -> new LookPage(tools));
    on(
        () -> {
          page.choose(2);
          page.choose(5);
          page.choose(7);
          page.goOn();
          return null;
        });
    assertThat(shell.options.locale()).isEqualTo(Locale.GERMAN);
    assertThat(shell.options.theme()).isEqualTo(WindowOptions.Theme.HIGH_CONTRAST);
    assertThat(desk.settings().scale()).isEqualTo(2.0);
    assertThat(desk.options(false)).isEqualTo(shell.options);
  }

  @Test
  void twoClicksOnAPowerUpOpenItsResultAndOneDoesNot() throws Exception {
    HomePage page = open(() -> new HomePage(tools));
    on(
        () -> {
          JList<?> sets = (JList<?>) Components.named(page.component(), "home.sets");
          sets.setSelectedIndex(1);
          JList<?> list = (JList<?>) Components.named(page.component(), "home.powerUps");
          list.setSize(600, 400);
          assertThat(list.getModel().getSize()).isEqualTo(3);
          java.awt.Rectangle second = list.getCellBounds(1, 1);
          assertThat(click(list, second.x + 40, second.y + 10, 1)).isSameAs(page);
          assertThat(click(list, 40, 390, 2)).as("below the rows").isSameAs(page);
          assertThat(click(list, second.x + 40, second.y + 10, 2)).isInstanceOf(VerdictPage.class);
          return null;
        });
  }

  private Page click(java.awt.Component to, int x, int y, int count) {
    to.dispatchEvent(
        new java.awt.event.MouseEvent(
            to,
            java.awt.event.MouseEvent.MOUSE_CLICKED,
            1,
            0,
            x,
            y,
            count,
            false,
            java.awt.event.MouseEvent.BUTTON1));
    return shell.page();
  }

  @Test
  void theShapeOfAStateSaysInATipWhatItMeans() throws Exception {
    FakeSession session = new FakeSession(FakeSession.Scene.SHORT);
    Framed framed =
        on(
            () ->
                new Framed(
                    new WindowOptions(WindowOptions.Theme.LIGHT, Locale.GERMAN, false),
                    session,
                    Hearing.NOTHING));
    assertThat(
            on(
                () ->
                    ((javax.swing.JComponent)
                            Components.named(framed.component(), "sentence-shape"))
                        .getToolTipText()))
        .isEqualTo("Alarm");
  }

  @Test
  void theFirstScreenSaysWhatIsDue() throws Exception {
    HomePage page = open(() -> new HomePage(tools));
    assertThat(
            on(
                () ->
                    ((javax.swing.JTextArea) Components.named(page.component(), "reminder-text"))
                        .getText()))
        .contains("switched itself off at");
  }
}
