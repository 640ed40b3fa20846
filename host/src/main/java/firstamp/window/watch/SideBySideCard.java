package firstamp.window.watch;

import firstamp.window.present.WhatIfPresenter;
import firstamp.window.widgets.Palette;
import firstamp.window.widgets.WindowTheme;
import firstamp.window.words.Words;
import java.awt.BorderLayout;
import java.awt.GridLayout;
import java.util.List;
import javax.swing.BorderFactory;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JTextArea;

/** Two columns of lines under one title, in the place of the strips. */
final class SideBySideCard {
  private static final int MOST = 11;

  private final Palette palette;
  private final Words words;
  private final JPanel card = new JPanel(new BorderLayout(0, 12));
  private final JLabel title = new JLabel(" ");
  private final JLabel leftHead = new JLabel(" ");
  private final JLabel rightHead = new JLabel(" ");
  private final JTextArea left = new JTextArea();
  private final JTextArea right = new JTextArea();
  private WhatIfPresenter.Sides shown;

  SideBySideCard(Palette palette, Words words) {
    this.palette = palette;
    this.words = words;
    card.setName("side-by-side");
    card.setBackground(WindowTheme.colour(palette.surface()));
    card.setBorder(BorderFactory.createEmptyBorder(16, 20, 12, 20));
    title.setName("side-title");
    title.setFont(WindowTheme.font(true, 21));
    JPanel both = new JPanel(new GridLayout(1, 2, 24, 0));
    both.setOpaque(false);
    both.add(column(leftHead, left, "side-left"));
    both.add(column(rightHead, right, "side-right"));
    card.add(title, BorderLayout.NORTH);
    card.add(both, BorderLayout.CENTER);
  }

  private JComponent column(JLabel head, JTextArea lines, String name) {
    head.setName(name + "-head");
    head.setFont(WindowTheme.font(true, 18));
    head.setForeground(WindowTheme.colour(palette.ink()));
    lines.setName(name);
    lines.setEditable(false);
    lines.setFocusable(false);
    lines.setLineWrap(true);
    lines.setWrapStyleWord(true);
    lines.setOpaque(false);
    lines.setFont(WindowTheme.font(false, WindowTheme.READING_POINTS));
    lines.setForeground(WindowTheme.colour(palette.ink()));
    lines.setBorder(
        BorderFactory.createCompoundBorder(
            BorderFactory.createMatteBorder(2, 0, 0, 0, WindowTheme.colour(palette.edge())),
            BorderFactory.createEmptyBorder(10, 0, 0, 0)));
    JPanel column = new JPanel(new BorderLayout(0, 6));
    column.setOpaque(false);
    column.add(head, BorderLayout.NORTH);
    column.add(lines, BorderLayout.CENTER);
    return column;
  }

  JComponent component() {
    return card;
  }

  void show(WhatIfPresenter.Sides sides) {
    if (sides == null || sides.equals(shown)) {
      return;
    }
    shown = sides;
    title.setText(sides.title());
    leftHead.setText(sides.left().get(0));
    rightHead.setText(sides.right().get(0));
    left.setText(text(sides.left().subList(1, sides.left().size())));
    right.setText(text(sides.right().subList(1, sides.right().size())));
    card.getAccessibleContext()
        .setAccessibleName(sides.title() + ". " + left.getText() + ". " + right.getText());
  }

  private String text(List<String> lines) {
    int hidden = Math.max(0, lines.size() - MOST);
    String text = String.join("\n\n", lines.subList(0, lines.size() - hidden));
    return hidden == 0 ? text : text + "\n\n" + words.get("others.more", hidden);
  }
}
