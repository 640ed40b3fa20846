package firstamp.window;

import firstamp.window.BenchView.Sentence;
import java.awt.BorderLayout;
import java.awt.Dimension;
import java.awt.Font;
import javax.swing.BorderFactory;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JTextArea;

/** The one sentence to read first, always at the same place; the alarm bar when there is one. */
final class SentenceBar {
  static final int HEIGHT = 104;
  private static final int PADDING = 18;

  /** Room for the headline before the bar has been laid out. */
  private static final int USUAL_WIDTH = 1000;

  private static final Font FAR = WindowTheme.font(true, WindowTheme.FAR_POINTS);

  private final Palette palette;
  private final JPanel bar = new JPanel(new BorderLayout(14, 0));
  private final JPanel texts = new JPanel(new BorderLayout(0, 2));
  private final JLabel headline = new JLabel(" ");
  private final JTextArea action = new JTextArea();
  private final Canvas shape;
  private Sentence shown = new Sentence(Tone.PLAIN, "", "");

  SentenceBar(Palette palette, JComponent more, JComponent below) {
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
    headline.setFont(FAR);
    plain(action, "sentence-action", WindowTheme.READING_POINTS);
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
    right.add(below, BorderLayout.SOUTH);
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

  void show(Sentence sentence) {
    int height = Math.max(HEIGHT, neededHeight());
    if (sentence.equals(shown) && height == bar.getPreferredSize().height) {
      return;
    }
    shown = sentence;
    headline.setText(sentence.headline());
    fit();
    action.setText(sentence.action());
    headline.setForeground(WindowTheme.colour(palette.inkOn(sentence.tone())));
    action.setForeground(WindowTheme.colour(palette.inkOn(sentence.tone())));
    bar.setBackground(WindowTheme.colour(palette.groundOf(sentence.tone())));
    shape.say(sentence.tone().name().toLowerCase(java.util.Locale.ROOT));
    bar.getAccessibleContext().setAccessibleName(sentence.headline() + ". " + sentence.action());
    bar.setPreferredSize(new Dimension(100, Math.max(HEIGHT, neededHeight())));
    bar.revalidate();
    bar.repaint();
  }

  /** Names of rails are the person's own: one that is too long makes its line smaller. */
  private void fit() {
    int room = texts.getWidth() > 0 ? texts.getWidth() : USUAL_WIDTH;
    int width = headline.getFontMetrics(FAR).stringWidth(headline.getText()) + 2;
    headline.setFont(
        width <= room ? FAR : WindowTheme.font(true, FAR.getSize2D() * (room - 2) / width));
  }

  /** A long text makes the bar higher rather than losing its end. */
  private int neededHeight() {
    if (texts.getWidth() <= 0) {
      return HEIGHT;
    }
    action.setSize(texts.getWidth(), Short.MAX_VALUE);
    return headline.getPreferredSize().height + action.getPreferredSize().height + PADDING;
  }
}
