package firstamp.window.widgets;

import java.util.ArrayList;
import java.util.List;
import javax.swing.JComponent;
import javax.swing.JRadioButton;

/** A row of which one is chosen, each with a key that is written on it. Swing thread only. */
public final class Choices {
  private final int firstKey;
  private final List<JRadioButton> buttons = new ArrayList<>();
  private final JComponent row;

  /**
   * The first is chosen.
   *
   * @param name of the row; what it is for is {@code flow.NAME.more}
   * @param firstKey digit of the first, the others follow
   * @param texts what can be chosen
   */
  public Choices(Pieces pieces, String name, int firstKey, List<String> texts) {
    this.firstKey = firstKey;
    for (String text : texts) {
      int key = firstKey + buttons.size();
      JRadioButton button = new JRadioButton(key + "  " + text);
      button.setName(name + "-" + key);
      button.setFont(WindowTheme.font(false, 20));
      button.setOpaque(false);
      button.setIconTextGap(10);
      pieces.describe(button, name);
      int place = buttons.size();
      button.addActionListener(event -> choose(place));
      buttons.add(button);
    }
    row = pieces.row(buttons.toArray(new JComponent[0]));
    choose(0);
  }

  public JComponent component() {
    return row;
  }

  public JComponent first() {
    return buttons.get(0);
  }

  /** Place of the one that is chosen. */
  public int chosen() {
    for (int at = 0; at < buttons.size(); at++) {
      if (buttons.get(at).isSelected()) {
        return at;
      }
    }
    throw new IllegalStateException("none is chosen in " + buttons.get(0).getName());
  }

  /** Chooses one; no button group does it, for Tab would then pass over the others. */
  public void choose(int at) {
    for (JRadioButton button : buttons) {
      button.setSelected(button == buttons.get(at));
    }
  }

  /** The digit of one of them was pressed; other digits do nothing. */
  public void key(int digit) {
    int at = digit - firstKey;
    if (at >= 0 && at < buttons.size()) {
      choose(at);
      focus();
    }
  }

  /** Chooses the next one or the one before; the last one and the first stay. */
  public void across(int by) {
    choose(Math.max(0, Math.min(buttons.size() - 1, chosen() + by)));
    focus();
  }

  public boolean focused() {
    return buttons.stream().anyMatch(JComponent::isFocusOwner);
  }

  public void focus() {
    buttons.get(chosen()).requestFocusInWindow();
  }
}
