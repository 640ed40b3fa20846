package firstamp.window.frame;

import firstamp.window.present.BenchView.Sentence;
import firstamp.window.widgets.Canvas;
import firstamp.window.widgets.Palette;
import firstamp.window.widgets.Shapes;
import firstamp.window.widgets.Tone;
import firstamp.window.widgets.WindowTheme;
import firstamp.window.words.Words;
import java.awt.BorderLayout;
import java.awt.Dimension;
import java.awt.Font;
import java.util.Locale;
import java.util.function.ToIntFunction;
import javax.swing.BorderFactory;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JTextArea;

/** The one sentence to read first, always at the same place; the alarm bar when there is one. */
final class SentenceBar {
  static final int HEIGHT = 104;
  static final int FOLDED_HEIGHT = 62;
  private static final float FOLDED_POINTS = 26;
  private static final int PADDING = 18;

  /** Room for the headline before the bar has been laid out. */
  private static final int USUAL_WIDTH = 1000;

  private static final String MORE = " \u2026";
  private static final Font FAR = WindowTheme.font(true, WindowTheme.FAR_POINTS);

  private final Palette palette;
  private final Words words;
  private final JPanel bar = new JPanel(new BorderLayout(14, 0));
  private final JPanel texts = new JPanel(new BorderLayout(0, 2));
  private final JLabel headline = new JLabel(" ");
  private final JTextArea action = new JTextArea();
  private final Canvas shape;
  private final JPanel right = new JPanel(new BorderLayout());
  private boolean folded;
  private int fitted;
  private Sentence shown = new Sentence(Tone.PLAIN, "", "");

  SentenceBar(Palette palette, Words words) {
    this.palette = palette;
    this.words = words;
    shape =
        new Canvas(
            "sentence-shape",
            64,
            40,
            (g, w, h) -> {
              g.setColor(WindowTheme.colour(palette.groundOf(shown.tone())));
              g.fillRect(0, 0, w, h);
              g.setColor(WindowTheme.colour(palette.inkOn(shown.tone())));
              int size = folded ? 34 : 44;
              Shapes.draw(g, shown.tone(), 14, Math.max(4, (h - size) / 2.0), size);
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
    right.setOpaque(false);
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

  /** What lies at its right end; null = nothing. */
  void beside(JComponent keys) {
    right.removeAll();
    if (keys != null) {
      right.add(keys, BorderLayout.CENTER);
    }
    right.revalidate();
    bar.repaint();
  }

  /** In one line each where the room is small; the whole text is then in the tool tip. */
  void fold(boolean small) {
    if (small == folded) {
      return;
    }
    folded = small;
    action.setLineWrap(!small);
    action.setFont(
        WindowTheme.font(false, small ? WindowTheme.LEAST_POINTS : WindowTheme.READING_POINTS));
    bar.setBorder(
        small
            ? BorderFactory.createEmptyBorder(4, 4, 4, 10)
            : BorderFactory.createEmptyBorder(8, 4, 8, 14));
    Sentence now = shown;
    shown = null;
    show(now);
  }

  void show(Sentence sentence) {
    int height = neededHeight();
    boolean same = sentence.equals(shown) && texts.getWidth() == fitted;
    if (same && height == bar.getPreferredSize().height) {
      return;
    }
    shown = sentence;
    fitted = texts.getWidth();
    headline.setText(sentence.headline());
    fit();
    action.setText(folded ? oneLine(sentence.action(), actionRoom()) : sentence.action());
    bar.setToolTipText(folded ? sentence.action() : null);
    headline.setForeground(WindowTheme.colour(palette.inkOn(sentence.tone())));
    action.setForeground(WindowTheme.colour(palette.inkOn(sentence.tone())));
    bar.setBackground(WindowTheme.colour(palette.groundOf(sentence.tone())));
    String state = words.get("tone." + sentence.tone().name().toLowerCase(Locale.ROOT));
    shape.say(state);
    shape.setToolTipText(state);
    bar.getAccessibleContext().setAccessibleName(sentence.headline() + ". " + sentence.action());
    bar.setPreferredSize(new Dimension(100, neededHeight()));
    bar.revalidate();
    bar.repaint();
  }

  /** Names of rails are the person's own: one that is too long makes its line smaller. */
  private void fit() {
    Font far = folded ? WindowTheme.font(true, FOLDED_POINTS) : FAR;
    int room = texts.getWidth() > 0 ? texts.getWidth() : USUAL_WIDTH;
    headline.setFont(far);
    for (int width = headline.getPreferredSize().width;
        width > room && headline.getFont().getSize2D() > WindowTheme.LEAST_POINTS;
        width = headline.getPreferredSize().width) {
      float smaller = headline.getFont().getSize2D() * (room - 2) / width;
      headline.setFont(WindowTheme.font(true, smaller));
    }
  }

  private int actionRoom() {
    return texts.getWidth() > 0 ? texts.getWidth() - 2 : USUAL_WIDTH;
  }

  /** As many words as fit into a line; where some are missing it says so. */
  private String oneLine(String text, int room) {
    return oneLine(text, room, action.getFontMetrics(action.getFont())::stringWidth);
  }

  /** The same by any measure of width. */
  static String oneLine(String text, int room, ToIntFunction<String> width) {
    if (width.applyAsInt(text) <= room) {
      return text;
    }
    String part = text;
    while (width.applyAsInt(part + MORE) > room && part.lastIndexOf(' ') > 0) {
      part = part.substring(0, part.lastIndexOf(' '));
    }
    return part + MORE;
  }

  /** A long text makes the bar higher rather than losing its end. */
  private int neededHeight() {
    if (folded) {
      return FOLDED_HEIGHT;
    }
    if (texts.getWidth() <= 0) {
      return HEIGHT;
    }
    action.setSize(texts.getWidth(), Short.MAX_VALUE);
    return Math.max(
        HEIGHT, headline.getPreferredSize().height + action.getPreferredSize().height + PADDING);
  }
}
