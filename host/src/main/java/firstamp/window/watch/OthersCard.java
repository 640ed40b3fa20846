package firstamp.window.watch;

import firstamp.window.widgets.Palette;
import firstamp.window.widgets.WindowTheme;
import firstamp.window.words.Words;
import java.awt.BorderLayout;
import java.util.List;
import javax.swing.BorderFactory;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JTextArea;

/** The alarms behind the first one, a line each, in the place of the strips when asked for. */
final class OthersCard {
  private static final int MOST = 12;

  private final Words words;
  private final JPanel card = new JPanel(new BorderLayout(0, 10));
  private final JLabel title = new JLabel(" ");
  private final JTextArea lines = new JTextArea();
  private List<String> shown = List.of();

  OthersCard(Palette palette, Words words) {
    this.words = words;
    card.setName("others");
    card.setBackground(WindowTheme.colour(palette.surface()));
    card.setBorder(BorderFactory.createEmptyBorder(16, 20, 12, 20));
    title.setName("others-title");
    title.setFont(WindowTheme.font(true, 21));
    title.setText(words.get("others.title"));
    lines.setName("others-lines");
    lines.setEditable(false);
    lines.setFocusable(false);
    lines.setLineWrap(true);
    lines.setWrapStyleWord(true);
    lines.setOpaque(false);
    lines.setBorder(null);
    lines.setFont(WindowTheme.font(false, WindowTheme.READING_POINTS));
    card.add(title, BorderLayout.NORTH);
    card.add(lines, BorderLayout.CENTER);
  }

  JComponent component() {
    return card;
  }

  void show(List<String> others) {
    if (others.equals(shown)) {
      return;
    }
    shown = List.copyOf(others);
    int hidden = Math.max(0, shown.size() - MOST);
    String text = String.join("\n", shown.subList(0, shown.size() - hidden));
    lines.setText(hidden == 0 ? text : text + "\n" + words.get("others.more", hidden));
    card.getAccessibleContext().setAccessibleName(title.getText() + ". " + lines.getText());
  }
}
