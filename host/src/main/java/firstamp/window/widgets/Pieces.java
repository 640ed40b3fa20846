package firstamp.window.widgets;

import firstamp.window.words.Words;
import java.awt.Dimension;
import java.awt.EventQueue;
import java.awt.Insets;
import javax.swing.BorderFactory;
import javax.swing.JButton;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JTextArea;

/** The few kinds of parts that pages are put together from, dressed alike and all with a name. */
public final class Pieces {
  /** Inner width of a page at 1280 x 800. */
  public static final int WIDTH = 1240;

  private final Words words;
  private final Palette palette;

  public Pieces(Words words, Palette palette) {
    this.words = words;
    this.palette = palette;
  }

  public JLabel label(String name, String text, boolean bold, float points) {
    JLabel label = new JLabel(text.isEmpty() ? " " : text);
    label.setName(name);
    label.setFont(WindowTheme.font(bold, points));
    label.setForeground(WindowTheme.colour(palette.ink()));
    // A first letter may reach out to the left of where it stands (J), and would be cut off.
    label.setBorder(BorderFactory.createEmptyBorder(0, 2, 0, 0));
    return label;
  }

  public JLabel quiet(String name, String text, float points) {
    JLabel label = label(name, text, false, points);
    label.setForeground(WindowTheme.colour(palette.quietInk()));
    return label;
  }

  /** A text that wraps at a width and asks for the height that it needs there. */
  public JTextArea prose(String name, String text, float points, int width) {
    JTextArea area = new Prose();
    area.setName(name);
    area.setEditable(false);
    area.setFocusable(false);
    area.setLineWrap(true);
    area.setWrapStyleWord(true);
    area.setOpaque(false);
    // Letters that reach over their width on screens of another scale are not cut off.
    area.setBorder(BorderFactory.createEmptyBorder(0, 0, 0, 8));
    area.setFont(WindowTheme.font(false, points));
    area.setForeground(WindowTheme.colour(palette.ink()));
    say(area, text, width);
    return area;
  }

  /** Knows its height for the width that it really gets, whatever was thought before. */
  private static final class Prose extends JTextArea {
    private static final long serialVersionUID = 1L;

    /** A width that was given is kept; the height is what its text needs at the width it has. */
    @Override
    public Dimension getMaximumSize() {
      Dimension most = super.getMaximumSize();
      return isMaximumSizeSet() ? new Dimension(most.width, getPreferredSize().height) : most;
    }

    @Override
    public void setBounds(int x, int y, int width, int height) {
      boolean other = width != getWidth() && width > 0 && !getText().isEmpty();
      super.setBounds(x, y, width, height);
      if (other && isPreferredSizeSet()) {
        Dimension before = getPreferredSize();
        setPreferredSize(null);
        setMinimumSize(null);
        super.setBounds(x, y, width, Short.MAX_VALUE);
        int needed = getPreferredSize().height + 2;
        super.setBounds(x, y, width, height);
        // Its width stays what was asked for, so that a wider room widens it again.
        setPreferredSize(new Dimension(before.width, needed));
        setMinimumSize(new Dimension(100, needed));
        if (needed != before.height && isDisplayable()) {
          // What is round it is being laid out just now, and would not hear of it.
          EventQueue.invokeLater(this::revalidate);
        }
      }
    }
  }

  /** Puts other words into a wrapped text. */
  public static void say(JTextArea area, String text, int width) {
    area.setPreferredSize(null);
    area.setText(text);
    int shown = area.isDisplayable() && area.getWidth() > 0 ? area.getWidth() : width;
    area.setSize(shown, Short.MAX_VALUE);
    // A little room: fonts are wider by a hair on screens of another scale.
    int height = text.isEmpty() ? 0 : area.getPreferredSize().height + 2;
    area.setPreferredSize(new Dimension(width, height));
    area.setMinimumSize(new Dimension(100, height));
    area.getAccessibleContext().setAccessibleName(text);
  }

  /** What a page proposes next: blue, as something that waits for the person (IEC 60073). */
  public JButton main(String name, Runnable action) {
    return button(name, palette.ask(), palette.askInk(), 20, action);
  }

  /** Anything else that can be done. */
  public JButton plain(String name, Runnable action) {
    return button(name, palette.control(), palette.ink(), 17, action);
  }

  /** Its words are {@code flow.NAME}, what it does in a sentence {@code flow.NAME.more}. */
  private JButton button(String name, int ground, int ink, float points, Runnable action) {
    JButton button = new JButton(words.get("flow." + name));
    button.setName(name);
    button.setFont(WindowTheme.font(true, points));
    button.setBackground(WindowTheme.colour(ground));
    button.setForeground(WindowTheme.colour(ink));
    button.setMargin(new Insets(9, 16, 9, 16));
    describe(button, name);
    button.addActionListener(event -> action.run());
    return button;
  }

  /** Says in a sentence what a component is for. */
  public void describe(JComponent component, String name) {
    String more = words.get("flow." + name + ".more");
    component.getAccessibleContext().setAccessibleDescription(more);
    component.setToolTipText(more);
  }

  public JPanel row(JComponent... parts) {
    return ends(parts, new JComponent[0]);
  }

  /** A row whose last parts keep to the right; in more lines where the width does not do. */
  public JPanel ends(JComponent[] left, JComponent[] right) {
    JPanel row = clear(new WrapRow(12, 8, right.length));
    for (JComponent part : left) {
      row.add(part);
    }
    for (JComponent part : right) {
      row.add(part);
    }
    return row;
  }

  /** A page's ground with its margins. */
  public JPanel page(String name, java.awt.LayoutManager layout) {
    JPanel page = new JPanel(layout);
    page.setName(name);
    page.setBackground(WindowTheme.colour(palette.ground()));
    page.setBorder(BorderFactory.createEmptyBorder(12, 20, 14, 20));
    page.setFocusable(true);
    return page;
  }

  /** A raised sheet on the ground. */
  public JPanel sheet(String name, java.awt.LayoutManager layout) {
    JPanel sheet = new JPanel(layout);
    sheet.setName(name);
    sheet.setBackground(WindowTheme.colour(palette.surface()));
    sheet.setBorder(BorderFactory.createEmptyBorder(14, 18, 14, 18));
    return sheet;
  }

  public JPanel clear(java.awt.LayoutManager layout) {
    JPanel panel = new JPanel(layout);
    panel.setOpaque(false);
    return panel;
  }
}
