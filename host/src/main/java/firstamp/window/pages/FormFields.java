package firstamp.window.pages;

import firstamp.app.SheetEntries;
import firstamp.sheet.SheetField;
import firstamp.window.widgets.Palette;
import firstamp.window.widgets.Pieces;
import firstamp.window.widgets.WindowTheme;
import firstamp.window.words.Words;
import java.awt.Dimension;
import java.awt.FlowLayout;
import java.awt.GridBagConstraints;
import java.awt.GridBagLayout;
import java.awt.Insets;
import java.awt.event.FocusAdapter;
import java.awt.event.FocusEvent;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;
import javax.swing.BorderFactory;
import javax.swing.JComboBox;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JTextField;

/**
 * The entries of one section, in columns of fourteen; each is taken over when the person leaves it.
 */
final class FormFields {
  private static final int ROWS = 14;

  private final Words words;
  private final Pieces pieces;
  private final Palette palette;
  private final SheetEntries entries;
  private final Runnable changed;
  private final JPanel panel = new JPanel(new GridBagLayout());
  private final List<Line> lines = new ArrayList<>();

  /** One entry on the screen. */
  private record Line(
      FormSections.Entry entry, JComponent field, JLabel after, Supplier<String> typed) {}

  FormFields(
      Words words,
      Pieces pieces,
      Palette palette,
      SheetEntries entries,
      List<FormSections.Entry> shown,
      Runnable changed) {
    this.words = words;
    this.pieces = pieces;
    this.palette = palette;
    this.entries = entries;
    this.changed = changed;
    panel.setOpaque(false);
    panel.setName("form-fields");
    for (int k = 0; k < shown.size(); k++) {
      add(shown.get(k), k / ROWS * 2, k % ROWS);
    }
    GridBagConstraints rest = new GridBagConstraints();
    rest.gridx = 3;
    rest.gridy = ROWS;
    rest.weightx = 1;
    rest.weighty = 1;
    JPanel filler = pieces.clear(new java.awt.BorderLayout());
    filler.setPreferredSize(new Dimension(0, 0));
    panel.add(filler, rest);
  }

  JComponent component() {
    return panel;
  }

  private void add(FormSections.Entry entry, int column, int row) {
    GridBagConstraints at = new GridBagConstraints();
    at.gridy = row;
    at.anchor = GridBagConstraints.WEST;
    at.insets = new Insets(6, column == 0 ? 0 : 16, 6, 8);
    at.gridx = column;
    // An entry that has no words yet is called as on the sheet.
    String name = words.getOr(entry.wordsKey(), entry.field().key());
    JLabel label = pieces.label("label-" + entry.place(), name, true, 17);
    panel.add(label, at);
    at.insets = new Insets(6, 0, 6, 0);
    at.gridx = column + 1;
    Line line = line(entry);
    line.field().setName("entry-" + entry.place());
    line.field().setFont(WindowTheme.font(false, 18));
    line.field().getAccessibleContext().setAccessibleName(name);
    line.field().getAccessibleContext().setAccessibleDescription(range(entry.field()));
    line.field().setToolTipText(range(entry.field()));
    label.setLabelFor(line.field());
    line.field()
        .addFocusListener(
            new FocusAdapter() {
              @Override
              public void focusLost(FocusEvent event) {
                take(line);
              }
            });
    JPanel cell = pieces.clear(new FlowLayout(FlowLayout.LEFT, 0, 0));
    cell.add(line.field());
    line.after().setBorder(BorderFactory.createEmptyBorder(0, 8, 0, 0));
    cell.add(line.after());
    panel.add(cell, at);
    lines.add(line);
  }

  private Line line(FormSections.Entry entry) {
    String value = entries.value(entry.place());
    JLabel after = pieces.quiet("after-" + entry.place(), after(entry), 16);
    SheetField field = entry.field();
    if (field.kind() == SheetField.Kind.CHOICE || field.kind() == SheetField.Kind.FLAG) {
      List<String> ids =
          field.kind() == SheetField.Kind.FLAG ? List.of("true", "false") : field.choices();
      JComboBox<String> box = new JComboBox<>();
      String usual = entries.whenEmpty(entry.place());
      box.addItem(
          usual.isEmpty()
              ? words.get("form.notSaid")
              : words.get("form.notSaidTaken", words.getOr("choice." + usual, usual)));
      ids.forEach(id -> box.addItem(words.get("choice." + id)));
      box.setSelectedIndex(ids.indexOf(value) + 1);
      Line line =
          new Line(
              entry,
              box,
              after,
              () -> box.getSelectedIndex() <= 0 ? "" : ids.get(box.getSelectedIndex() - 1));
      box.addActionListener(event -> take(line));
      return line;
    }
    JTextField text = new JTextField(value, field.kind() == SheetField.Kind.TEXT ? 22 : 7);
    return new Line(entry, text, after, text::getText);
  }

  private String after(FormSections.Entry entry) {
    String unit = unit(entry.field());
    boolean open = entries.value(entry.place()).isEmpty();
    String usual = open ? entries.whenEmpty(entry.place()) : "";
    boolean chosen = !entry.field().choices().isEmpty() || unit.isEmpty();
    return usual.isEmpty() || chosen && entry.field().low() == null
        ? unit
        : (unit + "  " + words.get("form.taken", shortened(usual))).strip();
  }

  /** A number that follows from others may have more digits than anybody wants to read. */
  private static String shortened(String usual) {
    Double number = SheetEntries.number(usual);
    return number == null ? usual : firstamp.model.text.Numbers.text(number);
  }

  private String unit(SheetField field) {
    return words.getOr("unit." + field.unit(), field.unit());
  }

  private String range(SheetField field) {
    return switch (field.kind()) {
      case NUMBER ->
          words.get(
              "form.range", String.valueOf(field.low()), String.valueOf(field.high()), unit(field));
      case TEXT -> words.get("form.text");
      case CHOICE, FLAG -> words.get("form.choice");
    };
  }

  /** Takes over everything that is typed. */
  void take() {
    lines.forEach(this::take);
  }

  private void take(Line line) {
    String typed = line.typed().get();
    if (!typed.strip().equals(entries.value(line.entry().place()))) {
      entries.set(line.entry().place(), line.entry().field().kind(), typed);
      for (Line each : lines) {
        each.after().setText(after(each.entry()).isEmpty() ? " " : after(each.entry()));
      }
      changed.run();
    }
  }

  /** Puts an edge around the entry that is wrong. */
  void mark(String place) {
    for (Line line : lines) {
      boolean wrong = line.entry().place().equals(place);
      line.field().putClientProperty("JComponent.outline", wrong ? "error" : null);
      line.after().setForeground(WindowTheme.colour(wrong ? palette.ink() : palette.quietInk()));
      line.after().setFont(WindowTheme.font(wrong, 16));
      if (wrong) {
        line.after().setText(words.get("form.wrong"));
      }
    }
  }

  /** An entry by its place, for tests. */
  JComponent field(String place) {
    return lines.stream()
        .filter(line -> line.entry().place().equals(place))
        .findFirst()
        .orElseThrow()
        .field();
  }
}
