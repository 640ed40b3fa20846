package firstamp.window.widgets;

import firstamp.window.words.Words;
import java.awt.BorderLayout;
import java.awt.Dimension;
import java.awt.Insets;
import javax.swing.JButton;
import javax.swing.JLabel;
import javax.swing.SwingConstants;

/** A button with what it does in large and its key in small. */
public final class KeyButton {
  private static final int GAP = 6;

  private final JButton button = new JButton();
  private final JLabel main = new JLabel(" ", SwingConstants.CENTER);
  private final JLabel hint = new JLabel(" ", SwingConstants.CENTER);
  private boolean below;

  /**
   * Makes it.
   *
   * @param name of the component; its spoken words are {@code control.NAME.accessible}
   * @param text what it does
   * @param key that does the same, may be empty
   * @param action what it does when pressed
   */
  public KeyButton(Words words, String name, String text, String key, Runnable action) {
    button.setName(name);
    button.getAccessibleContext().setAccessibleName(words.get("control." + name + ".accessible"));
    button.getAccessibleContext().setAccessibleDescription((text + " " + key).strip());
    button.addActionListener(event -> action.run());
    button.setLayout(new BorderLayout(GAP, 0));
    button.setMargin(new Insets(2, 8, 2, 8));
    main.setText(text);
    main.setFont(WindowTheme.font(true, 17));
    hint.setText(key);
    hint.setFont(WindowTheme.font(false, 13));
    button.add(main, BorderLayout.CENTER);
    if (!key.isEmpty()) {
      button.add(hint, BorderLayout.EAST);
    }
  }

  /** At least this wide, and as wide as its words need. */
  public KeyButton size(int width, int height) {
    Insets insets = button.getInsets();
    // Words are a little wider on screens of another scale, which is not known yet.
    int needed = main.getPreferredSize().width * 21 / 20 + 2 + insets.left + insets.right;
    if (hint.getParent() != null && !below) {
      needed += hint.getPreferredSize().width * 21 / 20 + 2 + GAP;
    }
    Dimension size = new Dimension(Math.max(width, needed), height);
    button.setPreferredSize(size);
    button.setMinimumSize(size);
    return this;
  }

  /** The key goes below what it does, both larger. */
  public KeyButton large(float points) {
    main.setFont(WindowTheme.font(true, points));
    hint.setFont(WindowTheme.font(true, 16));
    button.add(hint, BorderLayout.SOUTH);
    below = true;
    return this;
  }

  /** A little smaller: two of them fit side by side where one would. */
  public KeyButton narrow() {
    main.setFont(WindowTheme.font(true, WindowTheme.LEAST_POINTS));
    button.setMargin(new Insets(2, 4, 2, 4));
    return this;
  }

  public JButton button() {
    return button;
  }

  public void enabled(boolean enabled) {
    button.setEnabled(enabled);
    main.setEnabled(enabled);
    hint.setEnabled(enabled);
  }

  /** Says what it does; true if that is new. */
  public boolean text(String text) {
    boolean other = !text.equals(main.getText());
    main.setText(text);
    return other;
  }

  public void hint(String text) {
    hint.setText(text);
  }

  public void colours(int ground, int ink) {
    button.setBackground(WindowTheme.colour(ground));
    main.setForeground(WindowTheme.colour(ink));
    hint.setForeground(WindowTheme.colour(ink));
  }
}
