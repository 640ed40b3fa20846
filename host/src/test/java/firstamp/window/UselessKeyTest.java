package firstamp.window;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.event.KeyEvent;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** A key that has nothing to do here gives its reason, and the reason goes again. */
@NeedsDisplay
@Timeout(value = 60, unit = TimeUnit.SECONDS)
final class UselessKeyTest extends BenchWindowCase {
  private String below() throws Exception {
    show();
    return Components.onSwing(
        () ->
            ((javax.swing.text.JTextComponent) Components.named(window.frame(), "pointer"))
                .getText());
  }

  @Test
  void aKeyThatCanDoNothingSaysWhyUntilOneDoesSomething() throws Exception {
    open(FakeSession.Scene.HEALTHY);
    key(KeyEvent.VK_U, 'u');
    assertThat(below()).isEqualTo("The job sheet lists no wire whose place is unknown.");
    key(KeyEvent.VK_Q, 'q');
    assertThat(below()).isEqualTo("This key belongs to a replay.");
    key(KeyEvent.VK_ENTER, '\n');
    assertThat(below()).isEqualTo("Nothing is being asked.");
    assertThat(session.wishes).isEmpty();
    key(KeyEvent.VK_H, 'h');
    assertThat(below()).doesNotContain("asked").doesNotContain("key");
  }

  @Test
  void theReasonIsSeenOnTheLookCardAndBehindAQuestionToo() throws Exception {
    open(FakeSession.Scene.LOOK_SHORT);
    assertThat(isThere("first-look")).isTrue();
    key(KeyEvent.VK_H, 'h');
    assertThat(below()).isEqualTo("\u201cHands in\u201d is for a set that is on.");
    key(KeyEvent.VK_F, 'f');
    assertThat(below()).isEqualTo("The job sheet gives no signal path to search.");
    close();
    open(FakeSession.Scene.ASKING);
    key(KeyEvent.VK_L, 'l');
    assertThat(below()).isEqualTo("First answer the question: 1 is yes, 0 is no.");
  }

  @Test
  void aReasonGoesWhenItIsSwitchedOff() throws Exception {
    open(FakeSession.Scene.HEALTHY);
    key(KeyEvent.VK_W, 'w');
    assertThat(below()).isEqualTo("Words for marks are typed once the set is off.");
    session.set(new FakeSession(FakeSession.Scene.FALLING).snapshot());
    assertThat(below()).doesNotContain("Words for marks");
  }

  @Test
  void aCountdownIsStoppedByAKeyThatCouldDoNothing() throws Exception {
    session = LiveStates.COUNTDOWN.session();
    window = BenchWindow.show(session, OPTIONS);
    show();
    key(KeyEvent.VK_Q, 'q');
    assertThat(session.wishes).containsExactly("off");
  }
}
