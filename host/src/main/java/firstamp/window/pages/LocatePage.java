package firstamp.window.pages;

import firstamp.bench.BenchSession;
import firstamp.locate.signal.LocateSession;
import firstamp.model.ClipMove;
import firstamp.run.BenchMode;
import firstamp.study.SearchState;
import firstamp.window.page.HoldKeys;
import firstamp.window.page.Page;
import firstamp.window.page.PageKeys;
import firstamp.window.page.PageRoom;
import firstamp.window.page.PageStrokes;
import firstamp.window.page.Tools;
import firstamp.window.page.Twice;
import firstamp.window.search.SearchHand;
import firstamp.window.search.SearchPresenter;
import firstamp.window.search.SearchView;
import firstamp.window.widgets.Canvas;
import firstamp.window.widgets.LinesPanel;
import firstamp.window.widgets.Pieces;
import firstamp.window.widgets.StateShape;
import firstamp.window.widgets.Tone;
import firstamp.window.widgets.WindowTheme;
import firstamp.window.words.Words;
import java.awt.BorderLayout;
import java.awt.GridLayout;
import java.awt.event.KeyEvent;
import java.util.List;
import javax.swing.JButton;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JTextArea;
import javax.swing.JTextField;

/**
 * The search for a lost signal: one sentence, "measure here next", and the path with its levels.
 *
 * <p>Key C held down while the clip is on the point takes the level; all that is done becomes a
 * mark of the power-up, so that its replay shows the same search. On a replay the arrows go through
 * the steps.
 */
public final class LocatePage implements Page {
  private static final int WIDTH = 1160;
  private static final int SHOWN = 4;

  private final Tools tools;
  private final Words words;
  private final BenchSession session;
  private final Page from;
  private final SearchHand hand;
  private final SearchPresenter presenter;
  private final ChainPainter painter;
  private final JPanel page;
  private final JPanel head;
  private final JLabel headline;
  private final JTextArea action;
  private final Canvas shape;
  private final Canvas chain;
  private final JTextArea likely;
  private final JTextArea done;
  private final JLabel hold;
  private final JTextField level = new JTextField(7);
  private SearchState whole;
  private SearchState state;
  private SearchView view;
  private final Twice twice = new Twice();
  private boolean everything;
  private int step = -1;

  /**
   * A page.
   *
   * @param session that is watched, null = a search that is only shown
   * @param whole of a search that is only shown, null where a session is watched
   * @param from page to go back to, null = the first screen
   */
  public LocatePage(Tools tools, BenchSession session, SearchState whole, Page from) {
    this.tools = tools;
    this.words = tools.words();
    this.session = session;
    this.whole = whole;
    this.from = from;
    hand = session == null ? null : new SearchHand(session);
    presenter = new SearchPresenter(words, tools.numbers());
    painter = new ChainPainter(tools.palette());
    Pieces pieces = tools.pieces();
    page = pieces.page("locate", new BorderLayout(0, 8));
    head = pieces.sheet("locate-head", new BorderLayout(14, 4));
    headline = pieces.label("locate-headline", " ", true, 30);
    action = pieces.prose("locate-action", " ", WindowTheme.READING_POINTS, WIDTH - 90);
    likely = pieces.prose("locate-likely", " ", WindowTheme.READING_POINTS, 560);
    done = pieces.prose("locate-done", " ", 16, 560);
    hold = pieces.label("locate-hold", " ", true, 18);
    chain = new Canvas("locate-chain", 900, 190, (g, w, h) -> painter.paint(g, w, h, view));
    shape =
        StateShape.canvas(
            "locate-shape", tools.palette(), () -> view == null ? Tone.PLAIN : view.tone());
    shape.say(words.get("search.state"));
    layOut(pieces);
    if (whole != null) {
      step = whole.search().observations().size();
    }
    refresh();
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
    page.add(head, BorderLayout.NORTH);
    page.add(PageRoom.middle(middle, lists), BorderLayout.CENTER);
    page.add(bottom, BorderLayout.SOUTH);
  }

  private JPanel buttons(Pieces pieces) {
    JPanel all = pieces.clear(new BorderLayout(0, 8));
    JComponent[] left = {};
    if (session == null) {
      left =
          new JComponent[] {
            pieces.plain("search.before", () -> across(-1)),
            pieces.plain("search.after", () -> across(1))
          };
    } else {
      JButton take = pieces.main("search.hold", () -> {});
      take.getModel().addChangeListener(event -> hold(take.getModel().isPressed()));
      JLabel typedTitle = typedTitle(pieces);
      all.add(
          pieces.row(
              take,
              pieces.plain("search.isThere", () -> choose(1)),
              pieces.plain("search.isGone", () -> choose(2)),
              pieces.plain("search.work", () -> choose(3)),
              pieces.plain("search.mended", () -> choose(4)),
              pieces.plain("search.takeBack", () -> choose(5))),
          BorderLayout.NORTH);
      left =
          new JComponent[] {
            pieces.plain("search.tap", () -> choose(6)),
            pieces.plain("search.whileOn", () -> choose(7)),
            typedTitle,
            level
          };
    }
    all.add(
        pieces.ends(
            left,
            new JComponent[] {
              pieces.plain("search.everything", () -> choose(9)),
              pieces.plain("search.back", this::back)
            }),
        BorderLayout.CENTER);
    return all;
  }

  private JLabel typedTitle(Pieces pieces) {
    level.setName("search.typed");
    level.setFont(WindowTheme.font(false, 18));
    level.getAccessibleContext().setAccessibleName(words.get("flow.search.typed"));
    pieces.describe(level, "search.typed");
    level.addActionListener(event -> typed());
    JLabel typedTitle =
        pieces.label("search-typed-title", words.get("flow.search.typed"), true, 16);
    typedTitle.setLabelFor(level);
    return typedTitle;
  }

  @Override
  public String name() {
    return "locate";
  }

  @Override
  public String title() {
    return words.get("search.windowTitle", headline.getText());
  }

  @Override
  public JComponent component() {
    return page;
  }

  @Override
  public PageStrokes strokes() {
    return new HoldKeys(KeyEvent.VK_C, this::hold, new PageKeys(this));
  }

  @Override
  public void tick(boolean focused) {
    refresh();
  }

  /** Shows where the search stands now. */
  public void refresh() {
    SearchState now = session == null ? upTo(step) : session.search();
    if (now == null || now.equals(state)) {
      return;
    }
    state = now;
    show(presenter.view(state, null));
  }

  /** A replay shows the search as it stood after so many steps. */
  private SearchState upTo(int steps) {
    LocateSession search = whole.search();
    LocateSession part =
        new LocateSession(
            search.graph(),
            search.settings(),
            search.railAlarms(),
            search.observations().subList(0, steps));
    return new SearchState(part, null, null, List.of(), 0);
  }

  private void show(SearchView next) {
    view = next;
    int ink = tools.palette().inkOn(view.tone());
    head.setBackground(WindowTheme.colour(tools.palette().groundOf(view.tone())));
    headline.setForeground(WindowTheme.colour(ink));
    action.setForeground(WindowTheme.colour(ink));
    headline.setText(view.headline());
    Pieces.say(action, view.action(), WIDTH - 90);
    Pieces.say(likely, LinesPanel.first(everything ? all() : view.likely(), 6), 560);
    Pieces.say(done, LinesPanel.first(view.done(), SHOWN), 560);
    hold.setText(view.hold().isEmpty() ? resting() : view.hold());
    chain.say(view.spoken());
    page.revalidate();
    page.repaint();
  }

  /** While nothing is held: how the clip is moved. */
  private String resting() {
    return session == null ? " " : words.get("search.offClipOn");
  }

  private List<String> all() {
    return state.search().answer().odds().stream()
        .map(odds -> odds.joint() + ": " + words.get("likely." + SearchPresenter.key(odds.word())))
        .toList();
  }

  /** What the page shows. */
  public SearchView view() {
    return view;
  }

  /** The clip is on the point that was asked for, or comes off it. */
  public void hold(boolean on) {
    if (session == null || state == null) {
      return;
    }
    hand.hold(state, on);
  }

  @Override
  public void choose(int number) {
    if (number == 9) {
      everything = !everything;
      state = null;
      refresh();
      return;
    }
    if (session == null || state == null) {
      return;
    }
    switch (number) {
      case 1 -> twice(1, "isThere", () -> hand.heard(state, ClipMove.Act.THERE));
      case 2 -> twice(2, "isGone", () -> hand.heard(state, ClipMove.Act.GONE));
      case 3 -> hand.stroke(state);
      case 4 -> twice(4, "mended", () -> hand.mended(state));
      case 5 -> twice(5, "takeBack", hand::back);
      case 6 -> hand.tap(state);
      case 7 -> twice(7, "whileOn", () -> session.mode(BenchMode.HANDS_IN, null));
      default -> {}
    }
    if (number == 3 || number == 6) {
      twice.forget();
    }
  }

  /** The first press says what the second one does. */
  private void twice(int key, String control, Runnable act) {
    if (twice.pressed(key)) {
      hold.setText(key == 7 ? words.get("search.handsIn") : " ");
      act.run();
    } else {
      String caption = Twice.caption(words.get("flow.search." + control));
      hold.setText(words.get(key == 7 ? "search.whileOn" : "twice.again", key, caption));
    }
  }

  /** Enter: the level in the field, read off another meter. */
  @Override
  public void goOn() {
    if (session != null) {
      typed();
    } else {
      across(1);
    }
  }

  private void typed() {
    try {
      double dbv = Double.parseDouble(level.getText().strip().replace(',', '.'));
      if (state != null && hand.typed(state, dbv)) {
        level.setText("");
        page.requestFocusInWindow();
      }
    } catch (NumberFormatException noNumber) {
      hold.setText(words.get("search.noNumber"));
    }
  }

  @Override
  public void across(int by) {
    if (session == null) {
      step = Math.max(0, Math.min(whole.search().observations().size(), step + by));
      refresh();
    }
  }

  @Override
  public void failed() {
    if (session != null) {
      session.off();
    }
  }

  @Override
  public void end() {
    if (from != null) {
      from.end();
    }
  }

  @Override
  public void back() {
    if (from == null) {
      tools.shell().home();
    } else {
      tools.shell().open(from);
    }
  }
}
