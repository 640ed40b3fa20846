package firstamp.window.frame;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.model.PedalJob;
import firstamp.window.page.PageStrokes;
import firstamp.window.watch.Pedal;
import java.awt.Component;
import java.awt.event.KeyEvent;
import java.util.ArrayList;
import java.util.List;
import javax.swing.JButton;
import javax.swing.JTextField;
import org.junit.jupiter.api.Test;

/** Which key is the frame's and which is the page's, without a window. */
class FrameKeysTest implements FrameKeys.Hands {
  private final List<String> done = new ArrayList<>();
  private final Pedal pedal = new Pedal(this);
  private final FrameKeys keys = new FrameKeys(null, this, pedal);
  private final JTextField field = new JTextField();
  private final JButton button = new JButton();
  private boolean armed = true;
  private boolean dead;
  private boolean counting;
  private boolean waits;
  private long now;
  private int touches;

  @Override
  public void off() {
    done.add("off");
  }

  @Override
  public void mark() {
    done.add("mark");
  }

  @Override
  public boolean counting() {
    return counting;
  }

  @Override
  public boolean fed() {
    return false;
  }

  @Override
  public boolean armed() {
    return armed;
  }

  @Override
  public boolean dead() {
    return dead;
  }

  @Override
  public void touched() {
    touches++;
  }

  @Override
  public boolean word(int number) {
    if (waits) {
      done.add("word " + number);
    }
    return waits;
  }

  @Override
  public PageStrokes page() {
    return stroke -> {
      boolean takes = !stroke.typing();
      if (takes && stroke.first()) {
        done.add("page " + KeyEvent.getKeyText(stroke.code()));
      }
      return takes;
    };
  }

  private boolean key(Component to, int id, int code, char letter) {
    now += 5;
    return keys.dispatchKeyEvent(new KeyEvent(to, id, now, 0, code, letter));
  }

  /** A whole stroke; what of it came through to the component. */
  private List<String> stroke(Component to, int code, char letter) {
    List<String> through = new ArrayList<>();
    if (!key(to, KeyEvent.KEY_PRESSED, code, letter)) {
      through.add("pressed");
    }
    if (letter != KeyEvent.CHAR_UNDEFINED
        && !key(to, KeyEvent.KEY_TYPED, KeyEvent.VK_UNDEFINED, letter)) {
      through.add("typed");
    }
    if (!key(to, KeyEvent.KEY_RELEASED, code, letter)) {
      through.add("released");
    }
    now += 500;
    return through;
  }

  @Test
  void theStrokeThatSwitchesOffIsEatenWholeAlsoWhenItRepeatsItself() {
    assertThat(stroke(button, KeyEvent.VK_SPACE, ' ')).isEmpty();
    assertThat(done).containsExactly("off");
    key(button, KeyEvent.KEY_PRESSED, KeyEvent.VK_SPACE, ' ');
    armed = false;
    for (int repeat = 0; repeat < 200; repeat++) {
      assertThat(key(button, KeyEvent.KEY_PRESSED, KeyEvent.VK_SPACE, ' ')).isTrue();
      assertThat(key(button, KeyEvent.KEY_TYPED, KeyEvent.VK_UNDEFINED, ' ')).isTrue();
      // Some systems repeat a held key as release and press.
      assertThat(key(button, KeyEvent.KEY_RELEASED, KeyEvent.VK_SPACE, ' ')).isTrue();
    }
    assertThat(done).containsExactly("off", "off");
  }

  @Test
  void onceNothingIsOnTheSpaceBarPressesWhatHasTheFocus() {
    armed = false;
    JTextField text = new JTextField();
    assertThat(stroke(text, KeyEvent.VK_SPACE, ' '))
        .containsExactly("pressed", "typed", "released");
    assertThat(done).isEmpty();
  }

  @Test
  void whileOnAFieldTakesFiguresAndNoLetters() {
    for (char figure : "0123456789.,-".toCharArray()) {
      int code = KeyEvent.getExtendedKeyCodeForChar(figure);
      assertThat(stroke(field, code, figure)).as("%s", figure).contains("typed");
    }
    assertThat(stroke(field, KeyEvent.VK_BACK_SPACE, '\b')).contains("pressed", "typed");
    assertThat(stroke(field, KeyEvent.VK_LEFT, KeyEvent.CHAR_UNDEFINED)).contains("pressed");
    for (char letter : "abzQ\u00e4!(".toCharArray()) {
      int code = KeyEvent.getExtendedKeyCodeForChar(letter);
      assertThat(stroke(field, code, letter)).as("%s", letter).doesNotContain("typed");
    }
    assertThat(done).isEmpty();
    armed = false;
    assertThat(stroke(field, KeyEvent.VK_A, 'a')).contains("typed");
  }

  @Test
  void nothingIsPastedIntoAFieldWhileOn() {
    KeyEvent paste =
        new KeyEvent(
            field,
            KeyEvent.KEY_PRESSED,
            1,
            java.awt.event.InputEvent.CTRL_DOWN_MASK,
            KeyEvent.VK_V,
            '\u0016');
    assertThat(keys.dispatchKeyEvent(paste)).isTrue();
  }

  @Test
  void aDigitTypedIntoAFieldIsNeverACommand() {
    for (boolean on : new boolean[] {true, false}) {
      armed = on;
      waits = true;
      for (char digit = '0'; digit <= '9'; digit++) {
        assertThat(stroke(field, KeyEvent.VK_0 + digit - '0', digit)).contains("typed");
      }
    }
    assertThat(done).isEmpty();
  }

  @Test
  void whatACommandTypesNeverReachesTheFieldOfTheNextPage() {
    armed = false;
    key(button, KeyEvent.KEY_PRESSED, KeyEvent.VK_5, '5');
    assertThat(done).containsExactly("page 5");
    assertThat(key(field, KeyEvent.KEY_TYPED, KeyEvent.VK_UNDEFINED, '5')).isTrue();
  }

  @Test
  void forASecondEveryKeyButOffIsDead() {
    armed = false;
    dead = true;
    for (int code :
        new int[] {KeyEvent.VK_1, KeyEvent.VK_ENTER, KeyEvent.VK_R, KeyEvent.VK_ESCAPE}) {
      assertThat(stroke(button, code, KeyEvent.CHAR_UNDEFINED)).isEmpty();
    }
    assertThat(done).isEmpty();
    armed = true;
    stroke(button, KeyEvent.VK_SPACE, ' ');
    assertThat(done).containsExactly("off");
  }

  @Test
  void anyKeyStopsACountdownAndOneThatIsHeldFromBeforeDoesNot() {
    counting = false;
    key(button, KeyEvent.KEY_PRESSED, KeyEvent.VK_1, '1');
    counting = true;
    key(button, KeyEvent.KEY_PRESSED, KeyEvent.VK_1, '1');
    assertThat(done).containsExactly("page 1");
    stroke(field, KeyEvent.VK_Q, 'q');
    assertThat(done).containsExactly("page 1", "off");
  }

  @Test
  void aMarkTakesItsWordFromADigit() {
    stroke(button, KeyEvent.VK_M, 'm');
    waits = true;
    stroke(button, KeyEvent.VK_4, '4');
    waits = false;
    stroke(button, KeyEvent.VK_4, '4');
    assertThat(done).containsExactly("mark", "word 4", "page 4");
  }

  @Test
  void theFocusCanAlwaysGoOn() {
    assertThat(stroke(field, KeyEvent.VK_TAB, '\t')).contains("pressed");
    assertThat(stroke(button, KeyEvent.VK_TAB, '\t')).contains("pressed");
  }

  @Test
  void noFootDoesAnythingButItsJob() {
    for (PedalJob job : PedalJob.values()) {
      pedal.job(job);
      for (boolean on : new boolean[] {true, false}) {
        armed = on;
        assertThat(stroke(button, FrameKeys.PEDAL, KeyEvent.CHAR_UNDEFINED)).isEmpty();
        keys.tick(now);
      }
    }
    assertThat(done).isNotEmpty().isSubsetOf("off", "mark");
  }

  /** A set that nobody touches is switched off: an eaten key is a hand all the same. */
  @Test
  void aKeyThatIsEatenSaysThatSomebodyIsThere() {
    stroke(button, KeyEvent.VK_SPACE, ' ');
    assertThat(done).containsExactly("off");
    assertThat(touches).isPositive();
  }
}
