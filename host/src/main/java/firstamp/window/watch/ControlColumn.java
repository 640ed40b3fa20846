package firstamp.window.watch;

import firstamp.app.Hearing;
import firstamp.window.present.BenchView;
import firstamp.window.widgets.KeyButton;
import firstamp.window.widgets.LeastFirst;
import firstamp.window.widgets.Palette;
import firstamp.window.words.Words;
import javax.swing.JComponent;
import javax.swing.JPanel;

/** The controls of the watching page under OFF: the verdict, seen, mark, sound, back. */
public final class ControlColumn {
  public static final int WIDTH = 196;
  private static final int GAP = 6;
  private final Palette palette;
  private final Words words;
  private final JPanel column = new JPanel(new LeastFirst(GAP));
  private final KeyButton seen;
  private final KeyButton mark;
  private final KeyButton home;
  private final KeyButton sound;
  private final ThinkButtons think;
  private final KeyButton verdict;

  ControlColumn(Palette palette, Words words, BenchActions actions) {
    this.palette = palette;
    this.words = words;
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
    home =
        new KeyButton(
                words,
                "home",
                words.get("control.home"),
                words.get("control.home.key"),
                actions::home)
            .size(WIDTH, 46);
    home.button().setVisible(false);
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
            .size(WIDTH, 62);
    think = new ThinkButtons(palette, words, actions);
    column.setName("controls");
    column.setOpaque(false);
    column.add(verdict.button());
    column.add(seen.button());
    column.add(mark.button());
    column.add(home.button());
    column.add(sound.button());
    column.add(think.component());
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

  /** The way back to the first screen, where there is one. */
  void home(boolean there) {
    home.button().setVisible(there);
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
    verdict.button().setVisible(next);
    // Enter is said once: what waits to be seen goes before the verdict.
    verdict.hint(controls.seen() ? "V" : words.get("control.verdict.key"));
    verdict.colours(
        controls.seen() ? palette.control() : palette.ask(),
        controls.seen() ? palette.ink() : palette.askInk());
    seen.enabled(controls.seen());
    if (controls.seen()) {
      seen.colours(palette.ask(), palette.askInk());
    } else {
      seen.colours(palette.control(), palette.ink());
    }
    mark.enabled(controls.mark());
    mark.colours(palette.control(), palette.ink());
    home.hint(controls.off() ? "0" : words.get("control.home.key"));
    home.colours(palette.control(), palette.ink());
  }
}
