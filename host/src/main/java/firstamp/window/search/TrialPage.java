package firstamp.window.search;

import firstamp.app.TrialKeeping;
import firstamp.locate.wire.WireAnswer;
import firstamp.locate.wire.WireCase;
import firstamp.locate.wire.WireStep;
import firstamp.window.page.Page;
import firstamp.window.page.Tools;
import firstamp.window.page.Twice;
import firstamp.window.words.Words;
import java.util.List;
import javax.swing.JComponent;

/**
 * Wires of unknown place, one at a time: what to do next, and the three places to try first, where
 * a wrong guess does the least harm. The whole table on demand; arrows up and down go to another
 * wire, left and right through the steps.
 */
public final class TrialPage implements Page {
  private final Tools tools;
  private final Words words;
  private final TrialKeeping keeping;
  private final Page from;
  private final WirePresenter presenter;
  private final TrialSheet sheet;
  private final Twice twice = new Twice();
  private WireCase whole;
  private int index;
  private int step;
  private int chosen;
  private WireView view;
  private String refused;

  /**
   * A page.
   *
   * @param wires with what was done so far
   * @param keeping of steps, null = they are only shown
   * @param from page to go back to, null = the first screen
   */
  public TrialPage(Tools tools, WireCase wires, TrialKeeping keeping, Page from) {
    this.tools = tools;
    this.words = tools.words();
    this.keeping = keeping;
    this.from = from;
    this.whole = wires;
    this.step = wires.steps().size();
    presenter = new WirePresenter(words, tools.numbers());
    sheet = new TrialSheet(tools, this, keeping != null);
    refresh();
  }

  @Override
  public String name() {
    return "trial";
  }

  @Override
  public String title() {
    return words.get("wires.windowTitle", sheet.headline());
  }

  @Override
  public JComponent component() {
    return sheet.component();
  }

  @Override
  public void shown() {
    tick(true);
  }

  /** No ohms are asked for while the set is fed or a rail still has volts. */
  @Override
  public void tick(boolean focused) {
    String now = keeping == null ? null : tools.shell().noOhms();
    if (!java.util.Objects.equals(now, refused)) {
      refused = now;
      refresh();
    }
  }

  private boolean refusesOhms() {
    WireAnswer.State state = answer().state();
    return refused != null
        && (state == WireAnswer.State.CHECK_COLD || state == WireAnswer.State.FIND_SHORT);
  }

  private WireCase now() {
    return whole.upTo(step);
  }

  private WireAnswer answer() {
    return now().answer(wire());
  }

  private String wire() {
    return whole.wires().get(index).name();
  }

  /** Shows where the wire stands. */
  void refresh() {
    view = presenter.view(now(), index);
    if (refusesOhms()) {
      view = view.refused(words.get("ohms.title"), refused);
    }
    sheet.show(view, keeping == null ? -1 : chosen);
    sheet.ask(answer(), wire(), chosenPlace(), refusesOhms());
  }

  private String chosenPlace() {
    List<WireView.PlaceView> places = view.places();
    return places.get(Math.min(chosen, places.size() - 1)).name();
  }

  /** What the page shows. */
  public WireView view() {
    return view;
  }

  @Override
  public void choose(int number) {
    if (number >= 1 && number <= view.places().size()) {
      chosen = number - 1;
      refresh();
    } else if (number == 9) {
      sheet.toggleTable();
    } else if (keeping != null && number == 5 && !whole.steps().isEmpty()) {
      twice(5, Twice.caption(words.get("flow.wires.takeBack")), () -> take(now().undo()));
      return;
    } else if (keeping != null && number == 7) {
      WireStep.Moved moved = new WireStep.Moved(wire(), chosenPlace(), null);
      twice(7, presenter.step(moved), () -> add(moved));
      return;
    }
    twice.forget();
  }

  /** The first press says what the second one keeps. */
  private void twice(int key, String what, Runnable act) {
    if (twice.pressed(key)) {
      act.run();
    } else {
      say(words.get(key == 0 ? "twice.enter" : "twice.again", key, what));
    }
  }

  /** Enter: keeps what was read, or judges the latest power-up as a trial at the chosen place. */
  @Override
  public void goOn() {
    if (keeping == null) {
      across(1);
      return;
    }
    tick(true);
    if (refusesOhms()) {
      say(refused);
      return;
    }
    try {
      switch (answer().state()) {
        case CHECK_COLD ->
            add(
                new WireStep.WireOhms(
                    wire(),
                    chosenPlace(),
                    TrialReading.number(sheet.first()),
                    TrialReading.optional(sheet.second())));
        case SOURCE_TEST ->
            add(
                new WireStep.SourceTest(
                    wire(),
                    TrialReading.number(sheet.first()),
                    TrialReading.number(sheet.second())));
        case FIND_SHORT -> add(TrialReading.again(now(), wire(), sheet.first(), sheet.second()));
        default -> {
          String wire = wire();
          String place = chosenPlace();
          WireCase now = now();
          twice(
              0,
              words.get("wires.judgeAs", wire, place),
              () ->
                  tools
                      .shell()
                      .aside(() -> keeping.judge(now, wire, place), this::add, this::trouble));
        }
      }
    } catch (IllegalArgumentException unfit) {
      say(words.get("wires.noNumber"));
    }
  }

  private void add(WireStep one) {
    try {
      take(now().with(new WireStep.Dated(one, keeping.epochMs())));
      sheet.taken();
    } catch (IllegalArgumentException unfit) {
      say(tools.why(unfit));
    }
  }

  private void take(WireCase next) {
    twice.forget();
    whole = next;
    step = next.steps().size();
    say("");
    refresh();
    tools
        .shell()
        .aside(
            () -> {
              keeping.keep(next);
              return true;
            },
            kept -> {},
            this::trouble);
  }

  private void trouble(Exception failure) {
    say(tools.why(failure));
  }

  private void say(String text) {
    sheet.say(text);
  }

  @Override
  public void move(int by) {
    index = Math.floorMod(index + by, whole.wires().size());
    chosen = 0;
    refresh();
  }

  @Override
  public void across(int by) {
    step = Math.max(0, Math.min(whole.steps().size(), step + by));
    refresh();
  }

  @Override
  public void failed() {
    if (from != null) {
      from.failed();
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
