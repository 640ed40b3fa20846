package firstamp.window;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.bench.Snapshot;
import firstamp.run.questions.Asking;
import firstamp.run.questions.OpenQuestion;
import firstamp.window.pages.AgainPage;
import java.awt.Component;
import java.awt.Robot;
import java.awt.event.KeyEvent;
import java.util.List;
import java.util.concurrent.TimeUnit;
import javax.swing.JTextField;
import javax.swing.SwingUtilities;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** The real window on a scripted session: keys, controls, what they switch and what they show. */
@NeedsDisplay
@Timeout(value = 60, unit = TimeUnit.SECONDS)
class BenchWindowTest extends BenchWindowCase {
  private void press(String name) throws Exception {
    Components.onSwing(
        () -> {
          ((javax.swing.AbstractButton) Components.named(window.frame(), name)).doClick();
          return null;
        });
  }

  @Test
  void theSpaceBarAlwaysOpensTheSwitch() throws Exception {
    open(FakeSession.Scene.HEALTHY);
    key(KeyEvent.VK_SPACE, ' ');
    assertThat(session.wishes).containsExactly("off");
  }

  @Test
  void theSpaceBarOpensTheSwitchEvenWithTheFocusOnAnotherControl() throws Exception {
    open(FakeSession.Scene.ASKING);
    Component yes = Components.onSwing(() -> Components.named(window.frame(), "question-yes"));
    for (int id : new int[] {KeyEvent.KEY_PRESSED, KeyEvent.KEY_RELEASED}) {
      SwingUtilities.invokeAndWait(
          () -> yes.dispatchEvent(new KeyEvent(yes, id, 1, 0, KeyEvent.VK_SPACE, ' ')));
    }
    assertThat(session.wishes).containsExactly("off");
  }

  @Test
  void aRealKeyboardReachesTheWindow() throws Exception {
    open(FakeSession.Scene.SHORT);
    Robot robot = new Robot();
    robot.setAutoWaitForIdle(true);
    // Without a window manager the focus comes with a click.
    java.awt.Point at =
        Components.onSwing(
            () -> {
              window.frame().toFront();
              java.awt.Point point =
                  Components.named(window.frame(), "figures").getLocationOnScreen();
              window.panel().component().requestFocus();
              return point;
            });
    robot.mouseMove(at.x + 60, at.y + 60);
    robot.mousePress(java.awt.event.InputEvent.BUTTON1_DOWN_MASK);
    robot.mouseRelease(java.awt.event.InputEvent.BUTTON1_DOWN_MASK);
    for (int round = 0; round < 50 && !session.wishes.contains("off"); round++) {
      robot.keyPress(KeyEvent.VK_SPACE);
      robot.keyRelease(KeyEvent.VK_SPACE);
      robot.waitForIdle();
    }
    assertThat(session.wishes).contains("off");
  }

  @Test
  void marksSeesAndRestoresOnlyAfterAQuestion() throws Exception {
    open(FakeSession.Scene.SHORT);
    key(KeyEvent.VK_M, 'm');
    key(KeyEvent.VK_ENTER, '\n');
    press("restore");
    assertThat(window.page()).isInstanceOf(AgainPage.class);
    assertThat(session.wishes).containsExactly("mark ", "seen");
    pageKey(KeyEvent.VK_1, '1');
    assertThat(session.wishes).containsExactly("mark ", "seen", "restore 4");
  }

  @Test
  void saysThatSomethingWasChangedAndThatItRecords() throws Exception {
    open(FakeSession.Scene.SHORT);
    key(KeyEvent.VK_E, 'e');
    key(KeyEvent.VK_D, 'd');
    assertThat(session.wishes).containsExactly("happened change", "happened record-on");
  }

  @Test
  void aProbeBoxThatRemembersIsSwitchedOnAgainStepByStep() throws Exception {
    open(FakeSession.Scene.REMEMBERED);
    show();
    key(KeyEvent.VK_ENTER, '\n');
    assertThat(session.wishes).isEmpty();
    key(KeyEvent.VK_R, 'r');
    assertThat(window.page()).isInstanceOf(AgainPage.class);
    // Nothing is different: ohms are typed first.
    pageKey(KeyEvent.VK_5, '5');
    pageKey(KeyEvent.VK_1, '1');
    assertThat(session.wishes).isEmpty();
    SwingUtilities.invokeAndWait(
        () -> {
          ((JTextField) Components.named(window.frame(), "again.ohms")).setText("820");
          window.page().goOn();
        });
    assertThat(session.wishes).containsExactly("restore 7");
  }

  /** A stroke on a page that is not the watching one. */
  private void pageKey(int code, char character) throws Exception {
    Component to = Components.onSwing(() -> window.page().component());
    for (int id : new int[] {KeyEvent.KEY_PRESSED, KeyEvent.KEY_RELEASED}) {
      SwingUtilities.invokeAndWait(
          () ->
              to.dispatchEvent(
                  new KeyEvent(to, id, System.currentTimeMillis(), 0, code, character)));
    }
  }

  @Test
  void oneStrokeSaysWhyItWasSwitchedOff() throws Exception {
    open(FakeSession.Scene.FALLING);
    show();
    key(KeyEvent.VK_2, '2');
    key(KeyEvent.VK_NUMPAD6, '6');
    key(KeyEvent.VK_1, '1');
    assertThat(session.wishes).containsExactly("why SMELL", "why SLIP", "why SMOKE");
  }

  @Test
  void noDigitSaysWhyWhileItIsOnOrAfterATrip() throws Exception {
    open(FakeSession.Scene.SHORT_OVER);
    show();
    key(KeyEvent.VK_2, '2');
    assertThat(session.wishes).isEmpty();
  }

  @Test
  void aKeyOrTheMouseSaysThatSomebodyIsThere() throws Exception {
    open(FakeSession.Scene.HEALTHY);
    int before = session.touches;
    key(KeyEvent.VK_T, 't');
    assertThat(session.touches).isGreaterThan(before);
  }

  @Test
  void whatSwitchesOnHasToBeHeld() throws Exception {
    open(FakeSession.Scene.ASKING);
    Snapshot now = session.snapshot();
    session.set(Scenes.withQuestion(now, new OpenQuestion(Asking.HANDS_OUT, null)));
    show();
    Component to = window.panel().component();
    key(KeyEvent.VK_1, '1');
    key(KeyEvent.VK_ENTER, '\n');
    press("question-yes");
    for (int round = 0; round < 10; round++) {
      key(KeyEvent.VK_1, '1');
      Thread.sleep(100);
    }
    assertThat(session.wishes).as("tapped ten times in a second").isEmpty();
    SwingUtilities.invokeAndWait(
        () -> to.dispatchEvent(new KeyEvent(to, KeyEvent.KEY_PRESSED, 1, 0, KeyEvent.VK_1, '1')));
    for (int round = 0; round < 100 && session.wishes.isEmpty(); round++) {
      Thread.sleep(50);
    }
    assertThat(session.wishes).containsExactly("answer hands-out true");
  }

  @Test
  void whatHelpsToThinkHasButtonsWhereTheSheetGivesSomething() throws Exception {
    open(FakeSession.Scene.HEALTHY);
    show();
    assertThat(Components.onSwing(() -> Components.visible(window.frame())))
        .noneMatch(part -> "wires".equals(part.getName()));
    session.set(Scenes.withThinking(session.snapshot()));
    java.util.List<String> asked = new java.util.ArrayList<>();
    SwingUtilities.invokeAndWait(
        () -> window.panel().whenThinking(() -> asked.add("search"), () -> asked.add("wires")));
    show();
    press("search");
    press("wires");
    assertThat(asked).containsExactly("search", "wires");
  }

  @Test
  void noKeySwitchesOnAgainWhereNothingHasSwitchedOff() throws Exception {
    open(FakeSession.Scene.HEALTHY);
    key(KeyEvent.VK_R, 'r');
    show();
    for (int line = 0; line < 4; line++) {
      key(KeyEvent.VK_1, '1');
    }
    assertThat(session.wishes).isEmpty();
  }

  @Test
  void noKeyThatRepeatsSaysYes() throws Exception {
    open(FakeSession.Scene.ASKING);
    Component to = window.panel().component();
    for (int round = 0; round < 30; round++) {
      SwingUtilities.invokeAndWait(
          () -> to.dispatchEvent(new KeyEvent(to, KeyEvent.KEY_PRESSED, 1, 0, KeyEvent.VK_1, '1')));
    }
    assertThat(session.wishes).isEmpty();
    key(KeyEvent.VK_ENTER, '\n');
    assertThat(session.wishes).isEmpty();
  }

  @Test
  void answersAQuestionOnceEveryLineIsTicked() throws Exception {
    open(FakeSession.Scene.ASKING);
    for (int line = 0; line < 2; line++) {
      key(KeyEvent.VK_NUMPAD1, '1');
    }
    assertThat(session.wishes).isEmpty();
    key(KeyEvent.VK_NUMPAD1, '1');
    assertThat(session.wishes).containsExactly("answer floating-supply true");
    key(KeyEvent.VK_NUMPAD0, '0');
    assertThat(session.wishes)
        .containsExactly("answer floating-supply true", "answer floating-supply false");
  }

  @Test
  void showsATripInTheTitle() throws Exception {
    open(FakeSession.Scene.SHORT);
    show();
    assertThat(Components.onSwing(() -> window.frame().getTitle()))
        .startsWith("A short: 0.51 \u03a9");
  }

  @Test
  void playsAReplayByKeysAndControls() throws Exception {
    open(FakeSession.Scene.REPLAY);
    key(KeyEvent.VK_SPACE, ' ');
    key(KeyEvent.VK_PERIOD, '.');
    key(KeyEvent.VK_B, 'b');
    press("replay-step");
    assertThat(session.wishes)
        .isEqualTo(
            List.of("pause false", "step", "seek " + (FakeSession.CLOSED_MS + 3100), "step"));
  }

  private java.util.List<String> header() throws Exception {
    return Components.onSwing(
        () ->
            Components.visible((java.awt.Container) Components.named(window.frame(), "header"))
                .stream()
                .filter(javax.swing.JLabel.class::isInstance)
                .map(each -> ((javax.swing.JLabel) each).getText())
                .toList());
  }

  @Test
  void aReplaySaysOnItsHeadThatNothingIsSwitched() throws Exception {
    open(FakeSession.Scene.REPLAY);
    show();
    assertThat(header()).contains("Replay, nothing is switched");
  }

  @Test
  void aLiveSetNeverSaysSo() throws Exception {
    open(FakeSession.Scene.HEALTHY);
    show();
    assertThat(header()).isNotEmpty().doesNotContain("Replay, nothing is switched");
  }
}
