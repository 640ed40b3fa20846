package firstamp.window.watch;

import firstamp.run.BenchMode;
import firstamp.window.widgets.KeyButton;
import firstamp.window.widgets.Palette;
import firstamp.window.widgets.WindowTheme;
import firstamp.window.widgets.WrapRow;
import firstamp.window.words.Words;
import java.awt.BorderLayout;
import java.awt.Dimension;
import javax.swing.BorderFactory;
import javax.swing.JComponent;
import javax.swing.JPanel;
import javax.swing.JTextArea;
import javax.swing.text.View;

/** The line below the strips: values at the pointer, and what the strips show. */
final class ViewRow {
  private static final int HEIGHT = 36;
  private static final int GAP = 10;

  /** All of them keep to the right. */
  private static final int KEYS = 8;

  /** Words are a little wider on screens of another scale. */
  private static final int ROOM = 8;

  private final Palette palette;
  private final Words words;
  private final JPanel row = new JPanel(new BorderLayout(GAP, 2));
  private final JTextArea pointer = new JTextArea();
  private final JPanel buttons = new JPanel(new WrapRow(5, 4, KEYS));
  private final KeyButton view;
  private MiddleCards.Card turnsTo;
  private int lines = 1;
  private final KeyButton narrower;
  private final KeyButton wider;
  private final KeyButton follow;
  private final KeyButton handsIn;
  private final KeyButton soak;
  private final KeyButton notes;
  private final KeyButton whatIf;

  ViewRow(Palette palette, Words words, BenchActions actions) {
    this.palette = palette;
    this.words = words;
    view =
        new KeyButton(words, "view", words.get("control.trip"), "T", actions::toggleView)
            .size(0, HEIGHT);
    narrower =
        new KeyButton(words, "narrower", words.get("control.narrower"), "", () -> actions.zoom(0.5))
            .size(90, HEIGHT);
    wider =
        new KeyButton(words, "wider", words.get("control.wider"), "", () -> actions.zoom(2))
            .size(90, HEIGHT);
    follow =
        new KeyButton(
                words,
                "follow",
                words.get("control.follow"),
                words.get("control.follow.key"),
                actions::follow)
            .size(0, HEIGHT);
    handsIn =
        new KeyButton(words, "handsIn", words.get("control.handsIn"), "H", actions::handsIn)
            .size(140, HEIGHT);
    soak =
        new KeyButton(words, "soak", words.get("control.soak"), "S", actions::soak)
            .size(110, HEIGHT);
    notes =
        new KeyButton(words, "notes", words.get("control.notes"), "W", actions::toggleNotes)
            .size(0, HEIGHT);
    whatIf =
        new KeyButton(words, "whatIf", words.get("control.whatIf"), "Q", actions::toggleWhatIf)
            .size(128, HEIGHT);
    pointer.setName("pointer");
    pointer.setEditable(false);
    pointer.setFocusable(false);
    pointer.setLineWrap(true);
    pointer.setWrapStyleWord(true);
    pointer.setOpaque(false);
    pointer.setBorder(BorderFactory.createEmptyBorder(1, 2, 0, 0));
    pointer.setFont(WindowTheme.font(false, WindowTheme.LEAST_POINTS));
    pointer.setForeground(WindowTheme.colour(palette.ink()));
    size();
    buttons.setOpaque(false);
    for (KeyButton key :
        new KeyButton[] {handsIn, soak, notes, whatIf, view, narrower, wider, follow}) {
      buttons.add(key.button());
    }
    row.setName("view-row");
    row.setOpaque(false);
    row.add(pointer, BorderLayout.CENTER);
    row.add(buttons, BorderLayout.SOUTH);
  }

  JComponent component() {
    return row;
  }

  /**
   * Says a sentence in lines of its own, above the buttons: those never give way to it. A second
   * line that was needed once stays, so that the strips do not jump while somebody points at them.
   */
  void say(String text) {
    if (!text.equals(pointer.getText())) {
      pointer.setText(text);
      pointer.getAccessibleContext().setAccessibleName(text);
    }
    int needed = row.getWidth() == 0 ? 1 : linesNeeded();
    if (needed > lines) {
      lines = needed;
      size();
    }
  }

  private void size() {
    int line = pointer.getFontMetrics(pointer.getFont()).getHeight();
    pointer.setPreferredSize(new Dimension(100, lines * line + 2));
    pointer.setMinimumSize(new Dimension(100, lines * line + 2));
    row.revalidate();
  }

  private int linesNeeded() {
    View words = pointer.getUI().getRootView(pointer);
    words.setSize(row.getWidth() - ROOM, 1000);
    int line = pointer.getFontMetrics(pointer.getFont()).getHeight();
    return Math.max(1, Math.round(words.getPreferredSpan(View.Y_AXIS) / line));
  }

  /**
   * Shows what can be turned to.
   *
   * @param pictures whether there is another picture than the strips
   * @param next what the key for it turns to
   */
  void show(boolean pictures, MiddleCards.Card next, boolean stripsShown, boolean following) {
    view.button().setVisible(pictures);
    if (next != turnsTo) {
      turnsTo = next;
      text(
          view,
          switch (next) {
            case TRIP -> "control.trip";
            case LOOK -> "control.look";
            default -> "control.strips";
          });
    }
    narrower.button().setVisible(stripsShown);
    wider.button().setVisible(stripsShown);
    follow.button().setVisible(stripsShown);
    follow.enabled(!following);
    for (KeyButton key :
        new KeyButton[] {handsIn, soak, notes, whatIf, view, narrower, wider, follow}) {
      key.colours(palette.control(), palette.ink());
    }
  }

  /** The two views that are there only sometimes: words for marks, and what if. */
  void more(boolean hasNotes, boolean notesShown, boolean hasWhatIf, boolean whatIfShown) {
    notes.button().setVisible(hasNotes);
    text(notes, notesShown ? "control.back" : "control.notes");
    whatIf.button().setVisible(hasWhatIf);
    text(whatIf, whatIfShown ? "control.strips" : "control.whatIf");
  }

  /** Hands in and soak, while the set is on. */
  void modes(boolean offered, BenchMode mode) {
    handsIn.button().setVisible(offered);
    soak.button().setVisible(offered);
    text(handsIn, mode == BenchMode.HANDS_IN ? "control.handsOut" : "control.handsIn");
    text(soak, mode == BenchMode.SOAK ? "control.soakEnd" : "control.soak");
  }

  /** Other words need another width. */
  private void text(KeyButton key, String word) {
    if (key.text(words.get(word))) {
      key.size(0, HEIGHT);
      row.revalidate();
    }
  }
}
