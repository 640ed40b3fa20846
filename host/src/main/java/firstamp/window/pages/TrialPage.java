package firstamp.window.pages;

import firstamp.app.TrialKeeping;
import firstamp.locate.wire.WireAnswer;
import firstamp.locate.wire.WireCase;
import firstamp.locate.wire.WireStep;
import firstamp.window.page.Page;
import firstamp.window.page.PageRoom;
import firstamp.window.page.Tools;
import firstamp.window.page.Twice;
import firstamp.window.search.WirePresenter;
import firstamp.window.search.WireView;
import firstamp.window.widgets.Canvas;
import firstamp.window.widgets.LinesPanel;
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

/**
 * Wires of unknown place, one at a time: what to do next, and the three places to try first, where
 * a wrong guess does the least harm. The whole table on demand; arrows up and down go to another
 * wire, left and right through the steps.
 */
public final class TrialPage implements Page {
  private static final int WIDTH = 1160;
  private static final int SHOWN = 4;

  private final Tools tools;
  private final Words words;
  private final TrialKeeping keeping;
  private final Page from;
  private final WirePresenter presenter;
  private final Pieces pieces;
  private final JPanel page;
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
    pieces = tools.pieces();
    page = pieces.page("trial", new BorderLayout(0, 8));
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
    go = pieces.main("wires.go", this::goOn);
    middle = pieces.clear(new BorderLayout(0, 8));
    mind = pieces.sheet("trial-mind", new BorderLayout());
    cards = pieces.clear(new GridLayout(1, WirePresenter.FIRST_PLACES, 14, 0));
    lists = pieces.clear(new GridLayout(1, 2, 16, 0));
    table = new WrappedTable("trial-table", words.get("wires.table"));
    shape =
        StateShape.canvas(
            "trial-shape", tools.palette(), () -> view == null ? Tone.PLAIN : view.tone());
    shape.say(words.get("wires.state"));
    layOut();
    refresh();
  }

  private void layOut() {
    head.add(shape, BorderLayout.WEST);
    JPanel texts = pieces.clear(new BorderLayout(0, 2));
    texts.add(title, BorderLayout.NORTH);
    texts.add(headline, BorderLayout.CENTER);
    texts.add(action, BorderLayout.SOUTH);
    head.add(texts, BorderLayout.CENTER);
    for (int at = 0; at < WirePresenter.FIRST_PLACES; at++) {
      rows.add(new PlaceCard(pieces, tools.palette(), at));
      cards.add(rows.get(at).panel());
    }
    lists.add(LinesPanel.of(pieces, words.get("wires.aboutTitle"), about));
    lists.add(LinesPanel.of(pieces, words.get("wires.doneTitle"), done));
    mind.setBackground(WindowTheme.colour(tools.palette().groundOf(Tone.CAUTION)));
    warnings.setForeground(WindowTheme.colour(tools.palette().inkOn(Tone.CAUTION)));
    mind.add(warnings, BorderLayout.CENTER);
    middle.add(mind, BorderLayout.NORTH);
    middle.add(cards, BorderLayout.CENTER);
    middle.add(lists, BorderLayout.SOUTH);
    JPanel bottom = pieces.clear(new BorderLayout(0, 8));
    bottom.add(said, BorderLayout.NORTH);
    bottom.add(buttons(), BorderLayout.CENTER);
    page.add(head, BorderLayout.NORTH);
    page.add(PageRoom.middle(middle, null), BorderLayout.CENTER);
    page.add(bottom, BorderLayout.SOUTH);
  }

  private JPanel buttons() {
    JPanel all = pieces.clear(new BorderLayout(0, 8));
    for (JTextField field : List.of(first, second)) {
      field.setFont(WindowTheme.font(false, 18));
      field.addActionListener(event -> goOn());
    }
    first.setName("wires.first");
    second.setName("wires.second");
    pieces.describe(first, "wires.first");
    pieces.describe(second, "wires.second");
    firstTitle.setLabelFor(first);
    secondTitle.setLabelFor(second);
    List<JComponent> row = new ArrayList<>();
    if (keeping != null) {
      row.addAll(List.of(firstTitle, first, secondTitle, second, go));
    }
    List<JComponent> keys = new ArrayList<>();
    keys.add(pieces.plain("wires.before", () -> across(-1)));
    keys.add(pieces.plain("wires.after", () -> across(1)));
    keys.add(pieces.plain("wires.other", () -> move(1)));
    if (keeping != null) {
      keys.add(pieces.plain("wires.moved", () -> choose(7)));
      keys.add(pieces.plain("wires.takeBack", () -> choose(5)));
    }
    all.add(pieces.row(row.toArray(new JComponent[0])), BorderLayout.NORTH);
    all.add(
        pieces.ends(
            keys.toArray(new JComponent[0]),
            new JComponent[] {
              pieces.plain("wires.everything", () -> choose(9)),
              pieces.plain("wires.back", this::back)
            }),
        BorderLayout.CENTER);
    return all;
  }

  @Override
  public String name() {
    return "trial";
  }

  @Override
  public String title() {
    return words.get("wires.windowTitle", headline.getText());
  }

  @Override
  public JComponent component() {
    return page;
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
    int ink = tools.palette().inkOn(view.tone());
    head.setBackground(WindowTheme.colour(tools.palette().groundOf(view.tone())));
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
      rows.get(at).show(there ? view.places().get(at) : null, keeping != null && at == chosen);
    }
    fields();
    fillTable();
    page.revalidate();
    page.repaint();
  }

  /** The fields ask for what the next step needs. */
  private void fields() {
    WireAnswer answer = answer();
    WireAnswer.State state = answer.state();
    boolean find = state == WireAnswer.State.FIND_SHORT;
    boolean cold = state == WireAnswer.State.CHECK_COLD || find;
    boolean source = state == WireAnswer.State.SOURCE_TEST;
    String place = find && answer.found().place() != null ? answer.found().place() : wire();
    firstTitle.setText(
        find
            ? words.get("wires.ohmChassis", place)
            : words.get(source ? "wires.alone" : "wires.ohm", chosenPlace()));
    secondTitle.setText(words.get(source ? "wires.loaded" : "wires.otherWay"));
    first.getAccessibleContext().setAccessibleName(firstTitle.getText());
    second.getAccessibleContext().setAccessibleName(secondTitle.getText());
    boolean ofRail = find && answer.found().place() != null;
    for (JComponent part : List.of(firstTitle, first, secondTitle, second)) {
      part.setVisible((cold || source) && !(ofRail && (part == second || part == secondTitle)));
      part.setEnabled(!refusesOhms());
    }
    go.setEnabled(!refusesOhms());
    go.setText(words.get(cold || source ? "flow.wires.go" : "flow.wires.judge"));
  }

  private String chosenPlace() {
    List<WireView.PlaceView> places = view.places();
    return places.get(Math.min(chosen, places.size() - 1)).name();
  }

  private void fillTable() {
    List<String> titles =
        List.of("place", "kind", "likely", "harm", "reason").stream()
            .map(column -> words.get("wires.column." + column))
            .toList();
    table.show(titles, view.table());
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
      boolean all = table.component().getParent() == null;
      middle.remove(all ? cards : table.component());
      middle.add(all ? table.component() : cards, BorderLayout.CENTER);
      // The table takes the room of what is known of this wire too.
      lists.setVisible(!all);
      page.revalidate();
      page.repaint();
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
                    TrialReading.number(first),
                    TrialReading.optional(second)));
        case SOURCE_TEST ->
            add(
                new WireStep.SourceTest(
                    wire(), TrialReading.number(first), TrialReading.number(second)));
        case FIND_SHORT -> add(TrialReading.again(now(), wire(), first, second));
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
      first.setText("");
      second.setText("");
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
    Pieces.say(said, text, WIDTH);
    page.revalidate();
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
