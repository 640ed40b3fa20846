package firstamp.window;

import java.awt.GridBagConstraints;
import java.awt.GridBagLayout;
import java.awt.Insets;
import javax.swing.JComponent;
import javax.swing.JPanel;

/** The controls at the right: OFF, seen, mark, switch on again. */
final class ControlColumn {
  static final int WIDTH = 196;
  private static final int OFF_HEIGHT = 150;
  private static final int IDLE_OFF_HEIGHT = 92;

  private final Palette palette;
  private final Words words;
  private final JPanel column = new JPanel(new GridBagLayout());
  private final KeyButton off;
  private final KeyButton seen;
  private final KeyButton mark;
  private final KeyButton restore;
  private final KeyButton sound;
  private final ThinkButtons think;
  private boolean idle;
  private final KeyButton verdict;

  ControlColumn(Palette palette, Words words, BenchActions actions) {
    this.palette = palette;
    this.words = words;
    off =
        new KeyButton(words, "off", words.get("off.word"), words.get("off.key"), actions::offOrHold)
            .large(58)
            .size(WIDTH, OFF_HEIGHT);
    seen =
        new KeyButton(
                words,
                "seen",
                words.get("control.seen"),
                words.get("control.seen.key"),
                actions::seen)
            .size(WIDTH, 54);
    mark =
        new KeyButton(
                words,
                "mark",
                words.get("control.mark"),
                words.get("control.mark.key"),
                actions::mark)
            .size(WIDTH, 46);
    restore =
        new KeyButton(words, "restore", words.get("control.restore"), "R", actions::restore)
            .size(WIDTH, 46);
    sound =
        new KeyButton(words, "sound", words.get("control.sound"), "X", actions::toggleSound)
            .size(WIDTH, 38);
    verdict =
        new KeyButton(
                words,
                "verdict",
                words.get("control.verdict"),
                words.get("control.verdict.key"),
                actions::next)
            .size(WIDTH, 72);
    think = new ThinkButtons(palette, words, actions);
    column.setName("controls");
    column.setOpaque(false);
    GridBagConstraints at = new GridBagConstraints();
    at.gridx = 0;
    at.fill = GridBagConstraints.BOTH;
    at.weightx = 1;
    at.insets = new Insets(0, 0, 6, 0);
    // OFF takes all the height that the others leave.
    at.weighty = 1;
    column.add(off.button(), at);
    at.weighty = 0;
    column.add(verdict.button(), at);
    column.add(seen.button(), at);
    column.add(mark.button(), at);
    column.add(sound.button(), at);
    column.add(think.component(), at);
    at.insets = new Insets(0, 0, 0, 0);
    column.add(restore.button(), at);
  }

  JComponent component() {
    return column;
  }

  /** The key for the sound is there where there is a sound. */
  void sound(Hearing.State heard) {
    boolean muted = heard == Hearing.State.MUTED;
    sound.button().setVisible(muted || heard == Hearing.State.HEARD);
    sound.text(words.get(muted ? "control.soundOn" : "control.sound"));
    sound.colours(palette.control(), palette.ink());
  }

  /** What helps to think, where the sheet gives something. */
  void think(boolean path, boolean unknown) {
    think.show(path, unknown);
  }

  /**
   * Shows what can be done.
   *
   * @param next whether the verdict is there to go on to
   */
  void show(BenchView now, boolean next) {
    BenchView.Controls controls = now.controls();
    column.setVisible(now.replay() == null);
    // Where there is nothing to switch off the others need the room more.
    if (idle == controls.off()) {
      idle = !controls.off();
      off.size(WIDTH, idle ? IDLE_OFF_HEIGHT : OFF_HEIGHT);
      column.revalidate();
    }
    off.enabled(controls.off());
    off.hint(controls.off() ? words.get("off.key") : controls.offWords());
    if (controls.off()) {
      off.colours(palette.off(), palette.offInk());
    } else {
      off.colours(palette.ground(), palette.quietInk());
    }
    verdict.button().setVisible(next);
    verdict.colours(palette.ask(), palette.askInk());
    seen.enabled(controls.seen());
    if (controls.seen()) {
      seen.colours(palette.ask(), palette.askInk());
    } else {
      seen.colours(palette.control(), palette.ink());
    }
    mark.enabled(controls.mark());
    mark.colours(palette.control(), palette.ink());
    restore.button().setVisible(controls.restore() != null);
    restore.colours(palette.control(), palette.ink());
  }
}
