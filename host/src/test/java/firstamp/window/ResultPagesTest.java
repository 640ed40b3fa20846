package firstamp.window;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.app.Hearing;
import firstamp.app.WindowOptions;
import firstamp.window.page.Page;
import firstamp.window.pages.HomePage;
import firstamp.window.pages.LookPage;
import firstamp.window.pages.VerdictPage;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import javax.swing.JList;
import org.junit.jupiter.api.Test;

/** The result, the saved report and the settings, without a window around them. */
@NeedsDisplay
final class ResultPagesTest extends FlowPagesCase {
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
