package firstamp.window;

import firstamp.window.BenchView.Sentence;
import java.awt.BorderLayout;
import java.awt.Dimension;
import java.util.List;
import javax.swing.BorderFactory;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JTextArea;

/** The one sentence to read first, always at the same place; the alarm bar when there is one. */
final class SentenceBar {
  static final int HEIGHT = 104;
  private static final int LINES_SHOWN = 6;

  private final Palette palette;
  private final JPanel bar = new JPanel(new BorderLayout(14, 0));
  private final JPanel texts = new JPanel(new BorderLayout(0, 2));
  private final JLabel headline = new JLabel(" ");
  private final JTextArea action = new JTextArea();
  private final JTextArea others = new JTextArea();
  private final Canvas shape;
  private Sentence shown = new Sentence(Tone.PLAIN, "", "");
  private List<String> folded = List.of();
  private boolean open;

  SentenceBar(Palette palette, JComponent more) {
    this.palette = palette;
    shape =
        new Canvas(
            "sentence-shape",
            64,
            64,
            (g, w, h) -> {
              g.setColor(WindowTheme.colour(palette.groundOf(shown.tone())));
              g.fillRect(0, 0, w, h);
              g.setColor(WindowTheme.colour(palette.inkOn(shown.tone())));
              Shapes.draw(g, shown.tone(), 14, Math.max(4, (h - 44) / 2.0), 44);
            });
    headline.setName("sentence-headline");
    headline.setFont(WindowTheme.font(true, 27));
    plain(action, "sentence-action", 18);
    plain(others, "sentence-others", 15);
    texts.setOpaque(false);
    texts.add(headline, BorderLayout.NORTH);
    texts.add(action, BorderLayout.CENTER);
    bar.setName("sentence");
    bar.setBorder(BorderFactory.createEmptyBorder(8, 4, 8, 14));
    bar.add(shape, BorderLayout.WEST);
    bar.add(texts, BorderLayout.CENTER);
    JPanel right = new JPanel(new BorderLayout());
    right.setOpaque(false);
    right.add(more, BorderLayout.NORTH);
    bar.add(right, BorderLayout.EAST);
    bar.setPreferredSize(new Dimension(100, HEIGHT));
  }

  private static void plain(JTextArea area, String name, int points) {
    area.setName(name);
    area.setEditable(false);
    area.setFocusable(false);
    area.setLineWrap(true);
    area.setWrapStyleWord(true);
    area.setOpaque(false);
    area.setBorder(null);
    area.setFont(WindowTheme.font(false, points));
  }

  JComponent component() {
    return bar;
  }

  /** Shows the sentence; {@code open} lists the other alarms below it. */
  void show(Sentence sentence, List<String> others, boolean open) {
    if (sentence.equals(shown) && others.equals(folded) && open == this.open) {
      return;
    }
    shown = sentence;
    folded = List.copyOf(others);
    this.open = open;
    headline.setText(sentence.headline());
    action.setText(sentence.action());
    headline.setForeground(WindowTheme.colour(palette.inkOn(sentence.tone())));
    action.setForeground(WindowTheme.colour(palette.inkOn(sentence.tone())));
    this.others.setForeground(WindowTheme.colour(palette.inkOn(sentence.tone())));
    bar.setBackground(WindowTheme.colour(palette.groundOf(sentence.tone())));
    shape.say(sentence.tone().name().toLowerCase(java.util.Locale.ROOT));
    bar.getAccessibleContext().setAccessibleName(sentence.headline() + ". " + sentence.action());
    list(open && !folded.isEmpty());
    bar.revalidate();
    bar.repaint();
  }

  private void list(boolean visible) {
    texts.remove(others);
    int height = HEIGHT;
    if (visible) {
      int lines = Math.min(LINES_SHOWN, folded.size());
      others.setText(String.join("\n", folded.subList(0, lines)));
      texts.add(others, BorderLayout.SOUTH);
      height += lines * others.getFontMetrics(others.getFont()).getHeight() + 4;
    }
    bar.setPreferredSize(new Dimension(100, height));
  }
}
