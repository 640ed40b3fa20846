package firstamp.window.watch;

import firstamp.window.present.LookPresenter;
import firstamp.window.widgets.Palette;
import firstamp.window.widgets.Pieces;
import firstamp.window.widgets.WindowTheme;
import firstamp.window.words.Words;
import java.awt.BorderLayout;
import java.awt.FlowLayout;
import java.util.List;
import javax.swing.BorderFactory;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JTextArea;

/** What the first look found, in the place of the strips. */
final class LookCard {
  private static final int WIDTH = 980;

  private final Palette palette;
  private final JPanel card = new JPanel(new BorderLayout(0, 8));
  private final JLabel headline = new JLabel(" ");
  private final JPanel figures = new JPanel(new FlowLayout(FlowLayout.LEFT, 0, 0));
  private final JTextArea lines;
  private LookPresenter.LookView shown;

  LookCard(Palette palette, Words words) {
    this.palette = palette;
    card.setName("first-look");
    card.setBackground(WindowTheme.colour(palette.surface()));
    headline.setName("first-look-headline");
    headline.setFont(WindowTheme.font(true, 27));
    headline.setForeground(WindowTheme.colour(palette.ink()));
    figures.setName("first-look-figures");
    figures.setOpaque(false);
    lines = new Pieces(words, palette).prose("first-look-lines", "", 20, WIDTH);
    JPanel top = new JPanel(new BorderLayout(0, 6));
    top.setOpaque(false);
    top.add(headline, BorderLayout.NORTH);
    top.add(figures, BorderLayout.CENTER);
    card.add(top, BorderLayout.NORTH);
    card.add(lines, BorderLayout.CENTER);
  }

  JComponent component() {
    return card;
  }

  void show(LookPresenter.LookView look) {
    if (look == null || look.equals(shown)) {
      return;
    }
    shown = look;
    card.setBorder(
        BorderFactory.createCompoundBorder(
            BorderFactory.createMatteBorder(
                0, 8, 0, 0, WindowTheme.colour(palette.groundOf(look.tone()))),
            BorderFactory.createEmptyBorder(12, 22, 8, 20)));
    headline.setText(look.headline());
    figures.removeAll();
    look.figures().forEach(each -> figures.add(figure(each)));
    figures.setVisible(!look.figures().isEmpty());
    Pieces.say(lines, String.join("\n", look.lines()), WIDTH);
    card.getAccessibleContext()
        .setAccessibleName(
            look.headline() + ". " + spoken(look.figures()) + String.join(" ", look.lines()));
  }

  private static String spoken(List<LookPresenter.Named> figures) {
    StringBuilder all = new StringBuilder();
    figures.forEach(each -> all.append(each.name()).append(' ').append(each.value()).append(". "));
    return all.toString();
  }

  private JComponent figure(LookPresenter.Named named) {
    JPanel figure = new JPanel(new BorderLayout());
    figure.setOpaque(false);
    figure.setBorder(BorderFactory.createEmptyBorder(0, 0, 0, 48));
    figure.add(label("first-look-name", named.name(), false, 19), BorderLayout.NORTH);
    figure.add(label("first-look-figure", named.value(), true, 52), BorderLayout.CENTER);
    return figure;
  }

  private JLabel label(String name, String text, boolean bold, float points) {
    JLabel label = new JLabel(text);
    label.setName(name);
    label.setFont(WindowTheme.font(bold, points));
    label.setForeground(WindowTheme.colour(palette.ink()));
    return label;
  }
}
