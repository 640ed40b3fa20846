package firstamp.window.watch;

import firstamp.window.widgets.KeyButton;
import firstamp.window.widgets.Palette;
import firstamp.window.words.Words;
import java.awt.GridLayout;
import javax.swing.JComponent;
import javax.swing.JPanel;

/** What helps to think, beside the set: the lost signal and the unknown wires. */
final class ThinkButtons {
  private static final int HEIGHT = 38;
  private static final int GAP = 6;

  private final Palette palette;
  private final JPanel row = new JPanel(new GridLayout(1, 0, GAP, 0));
  private final KeyButton search;
  private final KeyButton wires;

  ThinkButtons(Palette palette, Words words, BenchActions actions) {
    this.palette = palette;
    search =
        new KeyButton(words, "search", words.get("control.search"), "F", actions::search)
            .narrow()
            .size(0, HEIGHT);
    wires =
        new KeyButton(words, "wires", words.get("control.wires"), "U", actions::wires)
            .narrow()
            .size(0, HEIGHT);
    row.setName("think");
    row.setOpaque(false);
  }

  JComponent component() {
    return row;
  }

  /**
   * Shows what the sheet gives something to think about.
   *
   * @param path whether it names a signal path
   * @param unknown whether it names wires of unknown place
   */
  void show(boolean path, boolean unknown) {
    row.setVisible(path || unknown);
    there(search, path);
    there(wires, unknown);
    search.colours(palette.control(), palette.ink());
    wires.colours(palette.control(), palette.ink());
  }

  /** The grid gives a part that is not shown its room too, so that it is taken out. */
  private void there(KeyButton button, boolean wanted) {
    boolean is = button.button().getParent() == row;
    if (wanted && !is) {
      row.add(button.button());
    } else if (!wanted && is) {
      row.remove(button.button());
    }
  }
}
