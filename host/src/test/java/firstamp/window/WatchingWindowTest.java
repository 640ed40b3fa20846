package firstamp.window;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.app.Hearing;
import firstamp.app.Watched;
import firstamp.model.PedalJob;
import firstamp.model.text.Worded;
import firstamp.window.frame.FrameKeys;
import java.awt.Component;
import java.awt.event.KeyEvent;
import java.util.concurrent.TimeUnit;
import javax.swing.JTextField;
import javax.swing.SwingUtilities;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** Watching in the real window: marks, the pedal, the modes, the cards and the sound. */
@NeedsDisplay
@Timeout(value = 60, unit = TimeUnit.SECONDS)
class WatchingWindowTest extends BenchWindowCase {
  @Test
  void wordsAreTypedIntoAMarkWhenNothingIsOn() throws Exception {
    open(FakeSession.Scene.OVER);
    key(KeyEvent.VK_W, 'w');
    show();
    JTextField field =
        (JTextField) Components.onSwing(() -> Components.named(window.frame(), "note-1"));
    SwingUtilities.invokeAndWait(() -> field.setText("hum"));
    for (char letter : new char[] {' ', 'm'}) {
      key(field, KeyEvent.KEY_TYPED, KeyEvent.VK_UNDEFINED, letter, 1);
    }
    assertThat(session.wishes).as("what is typed is text").isEmpty();
    SwingUtilities.invokeAndWait(field::postActionEvent);
    assertThat(session.wishes).singleElement().asString().startsWith("note 1 hum");
  }

  @Test
  void noWordsAreTypedWhileTheSetIsOn() throws Exception {
    open(FakeSession.Scene.HEALTHY);
    key(KeyEvent.VK_W, 'w');
    show();
    assertThat(Components.onSwing(() -> Components.visible(window.frame())))
        .noneMatch(component -> component instanceof JTextField);
  }

  @Test
  void aMarkPedalTapsAMarkAndHeldOpensTheSwitch() throws Exception {
    open(FakeSession.Scene.HEALTHY);
    SwingUtilities.invokeAndWait(() -> window.shell().pedal(PedalJob.MARK));
    Component to = window.panel().component();
    long now = firstamp.model.TimeSource.system().epochMillis();
    char none = KeyEvent.CHAR_UNDEFINED;
    // In one go: the window's own clock must not come between on a busy machine.
    SwingUtilities.invokeAndWait(
        () -> {
          to.dispatchEvent(new KeyEvent(to, KeyEvent.KEY_PRESSED, now, 0, FrameKeys.PEDAL, none));
          to.dispatchEvent(
              new KeyEvent(to, KeyEvent.KEY_RELEASED, now + 100, 0, FrameKeys.PEDAL, none));
        });
    SwingUtilities.invokeAndWait(() -> window.shell().keys().tick(now + 200));
    assertThat(session.wishes).containsExactly("mark ");
    key(to, KeyEvent.KEY_PRESSED, FrameKeys.PEDAL, none, now + 1000);
    SwingUtilities.invokeAndWait(() -> window.shell().keys().tick(now + 1700));
    assertThat(session.wishes).containsExactly("mark ", "off");
  }

  @Test
  void handsInIsOneKeyThereAndBack() throws Exception {
    open(FakeSession.Scene.HEALTHY);
    key(KeyEvent.VK_H, 'h');
    key(KeyEvent.VK_H, 'h');
    assertThat(session.wishes).containsExactly("mode HANDS_IN", "mode USUAL");
  }

  @Test
  void theFirstLookStaysReadableAfterItAndInAReplay() throws Exception {
    open(FakeSession.Scene.HEALTHY);
    key(KeyEvent.VK_T, 't');
    show();
    assertThat(isThere("first-look")).isTrue();
    key(KeyEvent.VK_T, 't');
    show();
    assertThat(isThere("first-look")).isFalse();
    close();
    open(FakeSession.Scene.REPLAY);
    key(KeyEvent.VK_T, 't');
    show();
    assertThat(isThere("first-look")).as("the trip picture is first").isFalse();
    key(KeyEvent.VK_T, 't');
    show();
    assertThat(isThere("first-look")).isTrue();
  }

  @Test
  void aLookThatKeepsTheSwitchOpenComesUpByItself() throws Exception {
    open(FakeSession.Scene.LOOK_SHORT);
    assertThat(isThere("first-look")).isTrue();
    key(KeyEvent.VK_T, 't');
    show();
    assertThat(isThere("first-look")).as("and not again").isFalse();
  }

  @Test
  void oneKeySilencesTheSoundAndTheWindowSaysSo() throws Exception {
    session = new FakeSession(FakeSession.Scene.RAIL_LOW);
    FakeHearing hearing = new FakeHearing();
    window =
        BenchWindow.show(null, new Watched(session, null, hearing, null, null, () -> {}), OPTIONS);
    show();
    assertThat(states()).doesNotContain("sound off");
    key(KeyEvent.VK_X, 'x');
    show();
    assertThat(hearing.state()).isEqualTo(Hearing.State.MUTED);
    assertThat(states()).contains("sound off");
    key(KeyEvent.VK_X, 'x');
    show();
    assertThat(hearing.state()).isEqualTo(Hearing.State.HEARD);
    assertThat(session.wishes).as("it is not seen by that").isEmpty();
  }

  private java.util.List<String> states() throws Exception {
    return Components.onSwing(
        () ->
            Components.visible(window.frame()).stream()
                .filter(part -> "state".equals(part.getName()))
                .map(part -> ((javax.swing.JLabel) part).getText())
                .toList());
  }

  /** Before, a sentence that did not fit beside the buttons took their place. */
  @Test
  void theRowOfButtonsStaysWhateverIsSaid() throws Exception {
    open(FakeSession.Scene.OVER);
    for (int round = 0; round < 3; round++) {
      show();
      SwingUtilities.invokeAndWait(() -> window.frame().validate());
    }
    for (String name : java.util.List.of("notes", "view", "narrower", "wider", "follow")) {
      assertThat(isThere(name)).as(name).isTrue();
    }
  }

  @Test
  void aComputerThatMayFallAsleepIsRefusedBeforeAnythingIsTicked() throws Exception {
    open(FakeSession.Scene.HEALTHY);
    SwingUtilities.invokeAndWait(
        () -> {
          window
              .panel()
              .show(session.snapshot(), Worded.asIs("Nothing keeps this computer awake."), true);
          window.panel().soak();
          window
              .panel()
              .show(session.snapshot(), Worded.asIs("Nothing keeps this computer awake."), true);
        });
    assertThat(isThere("question-yes")).isFalse();
    assertThat(
            Components.onSwing(
                () ->
                    ((javax.swing.text.JTextComponent) Components.named(window.frame(), "pointer"))
                        .getText()))
        .isEqualTo(
            "No unattended running while the computer may fall asleep."
                + " Nothing keeps this computer awake.");
    assertThat(session.wishes).isEmpty();
  }

  @Test
  void soakAsksLineByLineFirst() throws Exception {
    open(FakeSession.Scene.HEALTHY);
    key(KeyEvent.VK_S, 's');
    show();
    assertThat(
            Components.onSwing(
                () ->
                    ((javax.swing.JLabel) Components.named(window.frame(), "question-title"))
                        .getText()))
        .isEqualTo("Leave the set on alone for 2 hours?");
    for (int line = 0; line < 3; line++) {
      key(KeyEvent.VK_1, '1');
    }
    assertThat(session.wishes).isEmpty();
    key(KeyEvent.VK_1, '1');
    assertThat(session.wishes).containsExactly("mode SOAK");
  }

  @Test
  void noModeIsChangedWhileNothingIsOn() throws Exception {
    open(FakeSession.Scene.OVER);
    key(KeyEvent.VK_H, 'h');
    key(KeyEvent.VK_S, 's');
    show();
    assertThat(session.wishes).isEmpty();
  }

  @Test
  void noFootAnswersAQuestion() throws Exception {
    open(FakeSession.Scene.ASKING);
    for (PedalJob job : PedalJob.values()) {
      SwingUtilities.invokeAndWait(() -> window.shell().pedal(job));
      for (int tap = 0; tap < 5; tap++) {
        key(FrameKeys.PEDAL, KeyEvent.CHAR_UNDEFINED);
      }
      assertThat(session.wishes)
          .as("%s", job)
          .isNotEmpty()
          .noneMatch(wish -> wish.startsWith("answer") || wish.startsWith("seen"));
    }
  }
}
