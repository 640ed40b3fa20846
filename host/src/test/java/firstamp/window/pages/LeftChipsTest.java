package firstamp.window.pages;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.app.Desk;
import firstamp.app.HomeFolder;
import firstamp.app.WindowOptions;
import firstamp.bench.BenchSession;
import firstamp.bench.Snapshot;
import firstamp.emulate.Scenarios;
import firstamp.model.Conditions;
import firstamp.model.ProbeEvent;
import firstamp.study.PowerUpStudy;
import firstamp.study.ToldWords;
import firstamp.window.Components;
import firstamp.window.NeedsDisplay;
import firstamp.window.StillShell;
import firstamp.window.TestBench;
import firstamp.window.Views;
import firstamp.window.page.Tools;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import java.util.function.BooleanSupplier;
import javax.swing.JButton;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** How a set is left: said on the page before the power-up, kept with it and for the next time. */
@NeedsDisplay
class LeftChipsTest {
  private static final WindowOptions OPTIONS =
      new WindowOptions(WindowOptions.Theme.LIGHT, Locale.ENGLISH, false);
  private static final String JSON = Scenarios.sheetJson("healthy");

  @TempDir Path folder;
  private Desk desk;
  private Tools tools;
  private StillShell shell;

  @BeforeEach
  void desk() throws Exception {
    desk = TestBench.empty(folder, HomeFolder.ofThePerson());
    tools = on(() -> Views.tools(OPTIONS, desk));
    shell = (StillShell) tools.shell();
  }

  private static <T> T on(Callable<T> task) throws Exception {
    return Components.onSwing(task);
  }

  private ReadyPage open() throws Exception {
    return on(
        () -> {
          ReadyPage page = new ReadyPage(tools, JSON);
          shell.open(page);
          return page;
        });
  }

  private static String text(ReadyPage page, String name) {
    return ((JButton) Components.named(page.component(), name)).getText();
  }

  /** Key 3 twice, the mouse once on the volume, key 5 three times. */
  private void say(ReadyPage page) throws Exception {
    on(
        () -> {
          page.choose(3);
          page.choose(3);
          ((JButton) Components.named(page.component(), "ready.volume")).doClick(0);
          page.choose(5);
          page.choose(5);
          page.choose(5);
          return null;
        });
  }

  @Test
  void keysAndMouseSayItAndTheNextTimeItStandsThere() throws Exception {
    ReadyPage page = open();
    assertThat(text(page, "ready.load")).isEqualTo("3  Tape: not given");
    say(page);
    assertThat(text(page, "ready.load")).isEqualTo("3  Tape: blank");
    assertThat(text(page, "ready.volume")).isEqualTo("4  Volume: down");
    assertThat(text(page, "ready.function")).isEqualTo("5  Function switch: record");
    ReadyPage next = open();
    assertThat(text(next, "ready.load")).isEqualTo("3  Tape: blank");
    assertThat(text(next, "ready.function")).isEqualTo("5  Function switch: record");
    on(
        () -> {
          next.choose(5);
          return null;
        });
    assertThat(text(next, "ready.function")).isEqualTo("5  Function switch: not given");
  }

  @Test
  void whatWasSaidIsKeptWithThePowerUpAndReadOutAgain() throws Exception {
    ReadyPage page = open();
    say(page);
    on(
        () -> {
          page.goOn();
          return null;
        });
    WatchPage watching = (WatchPage) shell.page();
    BenchSession session = watching.session();
    await("on", () -> yesToAll(session).phase() == Snapshot.Phase.ON);
    session.off();
    await("over", () -> session.snapshot().phase() == Snapshot.Phase.ENDED);
    watching.end();
    List<ProbeEvent.Told> told = PowerUpStudy.of(desk.reader(desk.log(), 1)).told();
    assertThat(told)
        .filteredOn(ProbeEvent.ConditionsSaid.class::isInstance)
        .extracting(each -> ((ProbeEvent.ConditionsSaid) each).conditions())
        .containsExactly(
            new Conditions(
                Conditions.Load.BLANK_TAPE, Conditions.Volume.DOWN, Conditions.Function.RECORD));
    assertThat(new ToldWords().lines(told))
        .contains("Before switching on: a blank tape in, volume down, function switch on record.");
  }

  private static void await(String what, BooleanSupplier condition) throws Exception {
    for (int k = 0; k < 3000 && !condition.getAsBoolean(); k++) {
      Thread.sleep(10);
    }
    assertThat(condition.getAsBoolean()).as(what).isTrue();
  }

  private static Snapshot yesToAll(BenchSession session) {
    Snapshot now = session.snapshot();
    now.questions().forEach(question -> session.answer(question.id(), true));
    return now;
  }
}
