package firstamp.window.search;

import firstamp.locate.wire.WireAnswer;
import firstamp.window.page.PageRoom;
import firstamp.window.page.Tools;
import firstamp.window.widgets.Canvas;
import firstamp.window.widgets.LinesPanel;
import firstamp.window.widgets.Palette;
import firstamp.window.widgets.Pieces;
import firstamp.window.widgets.StateShape;
import firstamp.window.widgets.Tone;
import firstamp.window.widgets.WindowTheme;
import firstamp.window.widgets.WrappedTable;
import firstamp.window.words.Words;
import java.awt.BorderLayout;
import java.awt.GridLayout;
import java.util.ArrayList;
import java.util.List;
import javax.swing.JButton;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JTextArea;
import javax.swing.JTextField;

/** What stands on the page of a wire: headline, places to try first, lists, fields, controls. */
final class TrialSheet {
  private static final int WIDTH = 1160;
  private static final int SHOWN = 4;

  private final Words words;
  private final Palette palette;
  private final TrialPage page;
  private final boolean keeps;
  private final Pieces pieces;
  private final JPanel panel;
  private final JPanel head;
  private final JLabel title;
  private final JLabel headline;
  private final JTextArea action;
  private final JTextArea warnings;
  private final JTextArea about;
  private final JTextArea done;
  private final JTextArea said;
  private final List<PlaceCard> rows = new ArrayList<>();
  private final Canvas shape;
  private final WrappedTable table;
  private final JPanel middle;
  private final JPanel mind;
  private final JPanel cards;
  private final JPanel lists;
  private final JTextField first = new JTextField(7);
  private final JTextField second = new JTextField(7);
  private final JLabel firstTitle;
  private final JLabel secondTitle;
  private final JButton go;
  private WireView view;

  /**
   * A sheet.
   *
   * @param page that its controls drive
   * @param keeps whether steps are taken; else they are only shown
   */
  TrialSheet(Tools tools, TrialPage page, boolean keeps) {
    this.words = tools.words();
    this.palette = tools.palette();
    this.page = page;
    this.keeps = keeps;
    pieces = tools.pieces();
    panel = pieces.page("trial", new BorderLayout(0, 8));
    head = pieces.sheet("trial-head", new BorderLayout(14, 2));
    title = pieces.label("trial-title", " ", false, 17);
    headline = pieces.label("trial-headline", " ", true, 28);
    action = pieces.prose("trial-action", " ", WindowTheme.READING_POINTS, WIDTH - 90);
    warnings = pieces.prose("trial-warnings", "", WindowTheme.READING_POINTS, WIDTH);
    about = pieces.prose("trial-about", " ", 16, 560);
    done = pieces.prose("trial-done", " ", 16, 560);
    said = pieces.prose("trial-said", "", WindowTheme.READING_POINTS, WIDTH);
    firstTitle = pieces.label("trial-first-title", " ", true, 16);
    secondTitle = pieces.label("trial-second-title", " ", true, 16);
    go = pieces.main("wires.go", page::goOn);
    middle = pieces.clear(new BorderLayout(0, 8));
    mind = pieces.sheet("trial-mind", new BorderLayout());
    cards = pieces.clear(new GridLayout(1, WirePresenter.FIRST_PLACES, 14, 0));
    lists = pieces.clear(new GridLayout(1, 2, 16, 0));
    table = new WrappedTable("trial-table", words.get("wires.table"));
    shape =
        StateShape.canvas("trial-shape", palette, () -> view == null ? Tone.PLAIN : view.tone());
    shape.say(words.get("wires.state"));
    layOut();
  }

  private void layOut() {
    head.add(shape, BorderLayout.WEST);
    JPanel texts = pieces.clear(new BorderLayout(0, 2));
    texts.add(title, BorderLayout.NORTH);
    texts.add(headline, BorderLayout.CENTER);
    texts.add(action, BorderLayout.SOUTH);
    head.add(texts, BorderLayout.CENTER);
    for (int at = 0; at < WirePresenter.FIRST_PLACES; at++) {
      rows.add(new PlaceCard(pieces, palette, at));
      cards.add(rows.get(at).panel());
    }
    lists.add(LinesPanel.of(pieces, words.get("wires.aboutTitle"), about));
    lists.add(LinesPanel.of(pieces, words.get("wires.doneTitle"), done));
    mind.setBackground(WindowTheme.colour(palette.groundOf(Tone.CAUTION)));
    warnings.setForeground(WindowTheme.colour(palette.inkOn(Tone.CAUTION)));
    mind.add(warnings, BorderLayout.CENTER);
    middle.add(mind, BorderLayout.NORTH);
    middle.add(cards, BorderLayout.CENTER);
    middle.add(lists, BorderLayout.SOUTH);
    JPanel bottom = pieces.clear(new BorderLayout(0, 8));
    bottom.add(said, BorderLayout.NORTH);
    bottom.add(buttons(), BorderLayout.CENTER);
    panel.add(head, BorderLayout.NORTH);
    panel.add(PageRoom.middle(middle, null), BorderLayout.CENTER);
    panel.add(bottom, BorderLayout.SOUTH);
  }

  private JPanel buttons() {
    JPanel all = pieces.clear(new BorderLayout(0, 8));
    for (JTextField field : List.of(first, second)) {
      field.setFont(WindowTheme.font(false, 18));
      field.addActionListener(event -> page.goOn());
    }
    first.setName("wires.first");
    second.setName("wires.second");
    pieces.describe(first, "wires.first");
    pieces.describe(second, "wires.second");
    firstTitle.setLabelFor(first);
    secondTitle.setLabelFor(second);
    List<JComponent> row = new ArrayList<>();
    if (keeps) {
      row.addAll(List.of(firstTitle, first, secondTitle, second, go));
    }
    List<JComponent> keys = new ArrayList<>();
    keys.add(pieces.plain("wires.before", () -> page.across(-1)));
    keys.add(pieces.plain("wires.after", () -> page.across(1)));
    keys.add(pieces.plain("wires.other", () -> page.move(1)));
    if (keeps) {
      keys.add(pieces.plain("wires.moved", () -> page.choose(7)));
      keys.add(pieces.plain("wires.takeBack", () -> page.choose(5)));
    }
    all.add(pieces.row(row.toArray(new JComponent[0])), BorderLayout.NORTH);
    all.add(
        pieces.ends(
            keys.toArray(new JComponent[0]),
            new JComponent[] {
              pieces.plain("wires.everything", () -> page.choose(9)),
              pieces.plain("wires.back", page::back)
            }),
        BorderLayout.CENTER);
    return all;
  }

  /**
   * Shows a view.
   *
   * @param chosen place that is chosen, from 0; -1 = none
   */
  void show(WireView next, int chosen) {
    view = next;
    int ink = palette.inkOn(view.tone());
    head.setBackground(WindowTheme.colour(palette.groundOf(view.tone())));
    for (JComponent part : List.of(title, headline, action)) {
      part.setForeground(WindowTheme.colour(ink));
    }
    title.setText(view.title());
    headline.setText(view.headline());
    Pieces.say(action, view.action(), WIDTH - 90);
    mind.setVisible(!view.warnings().isEmpty());
    Pieces.say(warnings, LinesPanel.first(view.warnings(), 2), WIDTH);
    Pieces.say(about, view.about().isEmpty() ? " " : view.about(), 560);
    Pieces.say(done, LinesPanel.first(view.done(), SHOWN), 560);
    for (int at = 0; at < rows.size(); at++) {
      boolean there = at < view.places().size();
      rows.get(at).show(there ? view.places().get(at) : null, at == chosen);
    }
    fillTable();
    panel.revalidate();
    panel.repaint();
  }

  /** The fields ask for what the next step needs. */
  void ask(WireAnswer answer, String wire, String place, boolean refused) {
    WireAnswer.State state = answer.state();
    boolean find = state == WireAnswer.State.FIND_SHORT;
    boolean cold = state == WireAnswer.State.CHECK_COLD || find;
    boolean source = state == WireAnswer.State.SOURCE_TEST;
    String rail = find && answer.found().place() != null ? answer.found().place() : wire;
    firstTitle.setText(
        find
            ? words.get("wires.ohmChassis", rail)
            : words.get(source ? "wires.alone" : "wires.ohm", place));
    secondTitle.setText(words.get(source ? "wires.loaded" : "wires.otherWay"));
    first.getAccessibleContext().setAccessibleName(firstTitle.getText());
    second.getAccessibleContext().setAccessibleName(secondTitle.getText());
    boolean ofRail = find && answer.found().place() != null;
    for (JComponent part : List.of(firstTitle, first, secondTitle, second)) {
      part.setVisible((cold || source) && !(ofRail && (part == second || part == secondTitle)));
      part.setEnabled(!refused);
    }
    go.setEnabled(!refused);
    go.setText(words.get(cold || source ? "flow.wires.go" : "flow.wires.judge"));
  }

  private void fillTable() {
    List<String> titles =
        List.of("place", "kind", "likely", "harm", "reason").stream()
            .map(column -> words.get("wires.column." + column))
            .toList();
    table.show(titles, view.table());
  }

  /** Shows the whole table, or the places to try first again. */
  void toggleTable() {
    boolean all = table.component().getParent() == null;
    middle.remove(all ? cards : table.component());
    middle.add(all ? table.component() : cards, BorderLayout.CENTER);
    // The table takes the room of what is known of this wire too.
    lists.setVisible(!all);
    panel.revalidate();
    panel.repaint();
  }

  void say(String text) {
    Pieces.say(said, text, WIDTH);
    panel.revalidate();
  }

  String headline() {
    return headline.getText();
  }

  JTextField first() {
    return first;
  }

  JTextField second() {
    return second;
  }

  /** What was typed was taken. */
  void taken() {
    first.setText("");
    second.setText("");
  }

  JComponent component() {
    return panel;
  }
}
