package firstamp.window.watch;

import firstamp.window.page.PageKeys;
import firstamp.window.page.PageStrokes;
import firstamp.window.page.Stroke;
import java.awt.event.KeyEvent;
import javax.swing.JComboBox;

/**
 * The keys of the watching page beside those of the frame. What says yes (1) does not repeat while
 * it is held down.
 */
public final class Keys implements PageStrokes {
  private final BenchActions actions;

  public Keys(BenchActions actions) {
    this.actions = actions;
  }

  @Override
  public boolean pressed(Stroke stroke) {
    if (stroke.typing()) {
      // What is typed belongs to the text.
      return false;
    }
    switch (stroke.code()) {
      case KeyEvent.VK_SPACE -> stroke.once(actions::offOrHold);
      case KeyEvent.VK_1, KeyEvent.VK_NUMPAD1 -> {
        actions.hold(true);
        stroke.once(this::yesOrWhy);
      }
      case KeyEvent.VK_2, KeyEvent.VK_3, KeyEvent.VK_4, KeyEvent.VK_5, KeyEvent.VK_6 ->
          stroke.once(() -> actions.why(PageKeys.digit(stroke.code())));
      case KeyEvent.VK_NUMPAD2,
          KeyEvent.VK_NUMPAD3,
          KeyEvent.VK_NUMPAD4,
          KeyEvent.VK_NUMPAD5,
          KeyEvent.VK_NUMPAD6 ->
          stroke.once(() -> actions.why(PageKeys.digit(stroke.code())));
      case KeyEvent.VK_0, KeyEvent.VK_NUMPAD0 -> stroke.once(actions::no);
      case KeyEvent.VK_M, KeyEvent.VK_PLUS, KeyEvent.VK_ADD -> stroke.once(actions::mark);
      case KeyEvent.VK_E -> stroke.once(actions::changed);
      case KeyEvent.VK_D -> stroke.once(actions::recording);
      case KeyEvent.VK_L -> stroke.once(actions::nextLimit);
      case KeyEvent.VK_H -> stroke.once(actions::handsIn);
      case KeyEvent.VK_S -> stroke.once(actions::soak);
      case KeyEvent.VK_R -> stroke.once(actions::restore);
      case KeyEvent.VK_X -> stroke.once(actions::toggleSound);
      case KeyEvent.VK_W -> stroke.once(actions::toggleNotes);
      case KeyEvent.VK_Q -> stroke.once(actions::toggleWhatIf);
      case KeyEvent.VK_T -> stroke.once(actions::toggleView);
      case KeyEvent.VK_A -> stroke.once(actions::toggleMore);
      case KeyEvent.VK_F -> stroke.once(actions::search);
      case KeyEvent.VK_U -> stroke.once(actions::wires);
      case KeyEvent.VK_V -> stroke.once(actions::next);
      case KeyEvent.VK_ESCAPE -> stroke.once(actions::home);
      case KeyEvent.VK_ENTER -> stroke.once(this::enter);
      case KeyEvent.VK_PERIOD, KeyEvent.VK_DECIMAL -> actions.step();
      case KeyEvent.VK_HOME -> actions.follow();
      case KeyEvent.VK_PAGE_UP -> actions.zoom(0.5);
      case KeyEvent.VK_PAGE_DOWN -> actions.zoom(2);
      default -> {
        return arrow(stroke);
      }
    }
    return true;
  }

  private void yesOrWhy() {
    if (!actions.yes()) {
      actions.why(1);
    }
  }

  @Override
  public void released(int code) {
    if (PageKeys.digit(code) == 1) {
      actions.hold(false);
    }
  }

  @Override
  public void stop() {
    actions.hold(false);
  }

  /** Seen, else the answer that is due, else what comes next. */
  private void enter() {
    if (!actions.seen() && !actions.goOn() && !actions.otherPort()) {
      actions.next();
    }
  }

  private boolean arrow(Stroke stroke) {
    if (stroke.source() instanceof JComboBox<?>) {
      return false;
    }
    switch (stroke.code()) {
      case KeyEvent.VK_LEFT -> actions.pan(-0.2);
      case KeyEvent.VK_RIGHT -> actions.pan(0.2);
      case KeyEvent.VK_UP -> {
        return actions.nudgeLimit(1);
      }
      case KeyEvent.VK_DOWN -> {
        return actions.nudgeLimit(-1);
      }
      case KeyEvent.VK_N -> actions.jump(true);
      case KeyEvent.VK_B -> actions.jump(false);
      default -> {
        return false;
      }
    }
    return true;
  }
}
