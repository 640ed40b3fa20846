package firstamp.window.search;

import firstamp.window.page.PageRoom;
import firstamp.window.page.Tools;
import firstamp.window.widgets.Canvas;
import firstamp.window.widgets.LinesPanel;
import firstamp.window.widgets.Palette;
import firstamp.window.widgets.Pieces;
import firstamp.window.widgets.StateShape;
import firstamp.window.widgets.Tone;
import firstamp.window.widgets.WindowTheme;
import firstamp.window.words.Words;
import java.awt.BorderLayout;
import java.awt.GridLayout;
import java.util.List;
import javax.swing.JButton;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JTextArea;
import javax.swing.JTextField;

/** What stands on the page of the search: headline, path with its levels, lists, controls. */
final class LocateSheet {
  private static final int WIDTH = 1160;
  private static final int SHOWN = 4;

  private final Words words;
  private final Palette palette;
  private final LocatePage page;
  private final boolean watched;
  private final ChainPainter painter;
  private final JPanel panel;
  private final JPanel head;
  private final JLabel headline;
  private final JTextArea action;
  private final Canvas shape;
  private final Canvas chain;
  private final JTextArea likely;
  private final JTextArea done;
  private final JLabel hold;
  private final JTextField level = new JTextField(7);
  private SearchView view;

  /**
   * A sheet.
   *
   * @param page that its controls drive
   * @param watched whether a session is watched; else the search is only shown
   */
  LocateSheet(Tools tools, LocatePage page, boolean watched) {
    this.words = tools.words();
    this.palette = tools.palette();
    this.page = page;
    this.watched = watched;
    painter = new ChainPainter(palette);
    Pieces pieces = tools.pieces();
    panel = pieces.page("locate", new BorderLayout(0, 8));
    head = pieces.sheet("locate-head", new BorderLayout(14, 4));
    headline = pieces.label("locate-headline", " ", true, 30);
    action = pieces.prose("locate-action", " ", WindowTheme.READING_POINTS, WIDTH - 90);
    likely = pieces.prose("locate-likely", " ", WindowTheme.READING_POINTS, 560);
    done = pieces.prose("locate-done", " ", 16, 560);
    hold = pieces.label("locate-hold", " ", true, 18);
    chain = new Canvas("locate-chain", 900, 190, (g, w, h) -> painter.paint(g, w, h, view));
    shape =
        StateShape.canvas("locate-shape", palette, () -> view == null ? Tone.PLAIN : view.tone());
    shape.say(words.get("search.state"));
    layOut(pieces);
  }

  private void layOut(Pieces pieces) {
    head.add(shape, BorderLayout.WEST);
    JPanel texts = pieces.clear(new BorderLayout(0, 4));
    texts.add(headline, BorderLayout.NORTH);
    texts.add(action, BorderLayout.CENTER);
    head.add(texts, BorderLayout.CENTER);
    JPanel lists = pieces.clear(new GridLayout(1, 2, 16, 0));
    lists.add(LinesPanel.of(pieces, words.get("search.likelyTitle"), likely));
    lists.add(LinesPanel.of(pieces, words.get("search.doneTitle"), done));
    JPanel middle = pieces.clear(new BorderLayout(0, 8));
    middle.add(chain, BorderLayout.CENTER);
    middle.add(lists, BorderLayout.SOUTH);
    JPanel bottom = pieces.clear(new BorderLayout(0, 8));
    bottom.add(hold, BorderLayout.NORTH);
    bottom.add(buttons(pieces), BorderLayout.CENTER);
    panel.add(head, BorderLayout.NORTH);
    panel.add(PageRoom.middle(middle, lists), BorderLayout.CENTER);
    panel.add(bottom, BorderLayout.SOUTH);
  }

  private JPanel buttons(Pieces pieces) {
    JPanel all = pieces.clear(new BorderLayout(0, 8));
    JComponent[] left = {};
    if (!watched) {
      left =
          new JComponent[] {
            pieces.plain("search.before", () -> page.across(-1)),
            pieces.plain("search.after", () -> page.across(1))
          };
    } else {
      JButton take = pieces.main("search.hold", () -> {});
      take.getModel().addChangeListener(event -> page.hold(take.getModel().isPressed()));
      JLabel typedTitle = typedTitle(pieces);
      all.add(
          pieces.row(
              take,
              pieces.plain("search.isThere", () -> page.choose(1)),
              pieces.plain("search.isGone", () -> page.choose(2)),
              pieces.plain("search.work", () -> page.choose(3)),
              pieces.plain("search.mended", () -> page.choose(4)),
              pieces.plain("search.takeBack", () -> page.choose(5))),
          BorderLayout.NORTH);
      left =
          new JComponent[] {
            pieces.plain("search.tap", () -> page.choose(6)),
            pieces.plain("search.whileOn", () -> page.choose(7)),
            typedTitle,
            level
          };
    }
    all.add(
        pieces.ends(
            left,
            new JComponent[] {
              pieces.plain("search.everything", () -> page.choose(9)),
              pieces.plain("search.back", page::back)
            }),
        BorderLayout.CENTER);
    return all;
  }

  private JLabel typedTitle(Pieces pieces) {
    level.setName("search.typed");
    level.setFont(WindowTheme.font(false, 18));
    level.getAccessibleContext().setAccessibleName(words.get("flow.search.typed"));
    pieces.describe(level, "search.typed");
    level.addActionListener(event -> page.typed());
    JLabel typedTitle =
        pieces.label("search-typed-title", words.get("flow.search.typed"), true, 16);
    typedTitle.setLabelFor(level);
    return typedTitle;
  }

  /**
   * Shows a view.
   *
   * @param joints what is likely, a line each
   */
  void show(SearchView next, List<String> joints) {
    view = next;
    int ink = palette.inkOn(view.tone());
    head.setBackground(WindowTheme.colour(palette.groundOf(view.tone())));
    headline.setForeground(WindowTheme.colour(ink));
    action.setForeground(WindowTheme.colour(ink));
    headline.setText(view.headline());
    Pieces.say(action, view.action(), WIDTH - 90);
    Pieces.say(likely, LinesPanel.first(joints, 6), 560);
    Pieces.say(done, LinesPanel.first(view.done(), SHOWN), 560);
    say(view.hold().isEmpty() ? resting() : view.hold());
    chain.say(view.spoken());
    panel.revalidate();
    panel.repaint();
  }

  /** While nothing is held: how the clip is moved. */
  private String resting() {
    return !watched ? " " : words.get("search.offClipOn");
  }

  /** Says something in the line above the controls. */
  void say(String text) {
    hold.setText(text);
  }

  String headline() {
    return headline.getText();
  }

  /** What was typed as a level. */
  String level() {
    return level.getText();
  }

  /** The level was taken. */
  void taken() {
    level.setText("");
    panel.requestFocusInWindow();
  }

  JComponent component() {
    return panel;
  }
}
