package firstamp.window.search;

import firstamp.bench.BenchSession;
import firstamp.locate.signal.LocateSession;
import firstamp.model.ClipMove;
import firstamp.run.BenchMode;
import firstamp.study.SearchState;
import firstamp.window.page.HoldKeys;
import firstamp.window.page.Page;
import firstamp.window.page.PageKeys;
import firstamp.window.page.PageStrokes;
import firstamp.window.page.Tools;
import firstamp.window.page.Twice;
import firstamp.window.words.Words;
import java.awt.event.KeyEvent;
import java.util.List;
import javax.swing.JComponent;

/**
 * The search for a lost signal: one sentence, "measure here next", and the path with its levels.
 *
 * <p>Key C held down while the clip is on the point takes the level; all that is done becomes a
 * mark of the power-up, so that its replay shows the same search. On a replay the arrows go through
 * the steps.
 */
public final class LocatePage implements Page {
  private final Tools tools;
  private final Words words;
  private final BenchSession session;
  private final Page from;
  private final SearchHand hand;
  private final SearchPresenter presenter;
  private final LocateSheet sheet;
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
    sheet = new LocateSheet(tools, this, session != null);
    if (whole != null) {
      step = whole.search().observations().size();
    }
    refresh();
  }

  @Override
  public String name() {
    return "locate";
  }

  @Override
  public String title() {
    return words.get("search.windowTitle", sheet.headline());
  }

  @Override
  public JComponent component() {
    return sheet.component();
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
    view = presenter.view(state, null);
    sheet.show(view, everything ? all() : view.likely());
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
      sheet.say(key == 7 ? words.get("search.handsIn") : " ");
      act.run();
    } else {
      String caption = Twice.caption(words.get("flow.search." + control));
      sheet.say(words.get(key == 7 ? "search.whileOn" : "twice.again", key, caption));
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

  /** The level in the field, read off another meter. */
  void typed() {
    try {
      double dbv = Double.parseDouble(sheet.level().strip().replace(',', '.'));
      if (state != null && hand.typed(state, dbv)) {
        sheet.taken();
      }
    } catch (NumberFormatException noNumber) {
      sheet.say(words.get("search.noNumber"));
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
