package firstamp.window.watch;

import firstamp.bench.Snapshot;
import firstamp.window.present.ReplayPresenter;
import firstamp.window.widgets.Palette;
import firstamp.window.widgets.WindowTheme;
import firstamp.window.words.Numbers;
import firstamp.window.words.Words;
import java.awt.BorderLayout;
import java.awt.GridBagConstraints;
import java.awt.GridBagLayout;
import java.awt.Insets;
import java.util.ArrayList;
import java.util.List;
import java.util.function.BiConsumer;
import javax.swing.BorderFactory;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JTextField;

/**
 * Words for the marks, typed when the hands are free: one line each, the latest marks. Enter keeps
 * a line.
 */
final class NotesCard {
  private static final int MOST = 8;
  private static final int COLUMNS = 40;

  private final Words words;
  private final Numbers numbers;
  private final BiConsumer<Integer, String> keep;
  private final JPanel card = new JPanel(new BorderLayout(0, 10));
  private final JPanel lines = new JPanel(new GridBagLayout());
  private final List<JTextField> fields = new ArrayList<>();
  private List<Snapshot.Mark> shown = List.of();

  NotesCard(Palette palette, Words words, Numbers numbers, BiConsumer<Integer, String> keep) {
    this.words = words;
    this.numbers = numbers;
    this.keep = keep;
    card.setName("notes");
    card.setBackground(WindowTheme.colour(palette.surface()));
    card.setBorder(BorderFactory.createEmptyBorder(16, 20, 12, 20));
    JLabel title = new JLabel(words.get("notes.title"));
    title.setName("notes-title");
    title.setFont(WindowTheme.font(true, 21));
    lines.setOpaque(false);
    card.add(title, BorderLayout.NORTH);
    card.add(lines, BorderLayout.CENTER);
  }

  JComponent component() {
    return card;
  }

  /** Puts the keyboard into the last line. */
  void focus() {
    if (!fields.isEmpty()) {
      fields.get(fields.size() - 1).requestFocusInWindow();
    }
  }

  void show(Snapshot now) {
    if (now.marks().equals(shown)) {
      return;
    }
    shown = now.marks();
    lines.removeAll();
    fields.clear();
    GridBagConstraints at = new GridBagConstraints();
    at.insets = new Insets(4, 0, 4, 12);
    at.anchor = GridBagConstraints.LINE_START;
    for (int k = Math.max(0, shown.size() - MOST); k < shown.size(); k++) {
      line(at, k + 1, shown.get(k), ReplayPresenter.zero(now));
    }
    at.gridy = shown.size() + 1;
    at.weighty = 1;
    lines.add(new JLabel(), at);
    lines.revalidate();
    lines.repaint();
  }

  private void line(GridBagConstraints at, int number, Snapshot.Mark mark, double zero) {
    JTextField field = new JTextField(mark.text() == null ? "" : mark.text(), COLUMNS);
    field.setName("note-" + number);
    field.setFont(WindowTheme.font(false, 18));
    field.getAccessibleContext().setAccessibleDescription(words.get("notes.title"));
    field.addActionListener(event -> keep.accept(number, field.getText()));
    JLabel name = new JLabel(words.get("notes.mark", number, numbers.moment(mark.ms() - zero)));
    name.setName("note-name-" + number);
    name.setFont(WindowTheme.font(false, 17));
    name.setLabelFor(field);
    field.getAccessibleContext().setAccessibleName(name.getText());
    at.gridy = number;
    at.gridx = 0;
    lines.add(name, at);
    at.gridx = 1;
    lines.add(field, at);
    fields.add(field);
  }
}
