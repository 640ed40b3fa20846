package firstamp.window.pages;

import firstamp.app.BenchSets;
import firstamp.app.Desk;
import firstamp.app.SetEntry;
import firstamp.app.Watched;
import firstamp.log.PowerUpEntry;
import firstamp.window.page.Page;
import firstamp.window.page.PageRoom;
import firstamp.window.page.Tools;
import firstamp.window.present.HomePresenter;
import firstamp.window.widgets.Pieces;
import firstamp.window.widgets.WindowTheme;
import firstamp.window.words.Words;
import java.awt.BorderLayout;
import java.awt.Dimension;
import java.awt.FlowLayout;
import java.time.ZoneId;
import java.util.List;
import javax.swing.BorderFactory;
import javax.swing.JButton;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JTextArea;

/**
 * The first screen: the bench log with its sets and their power-ups, and what can be done next.
 * Enter goes on with the set that is chosen.
 */
public final class HomePage implements Page {
  private final Tools tools;
  private final Words words;
  private final HomePresenter presenter;
  private final ReminderBar reminder;
  private final JPanel page;
  private final RowList sets;
  private final RowList powerUps;
  private final JLabel name;
  private final SetFacts facts;
  private final JTextArea trouble;
  private final JButton start;
  private final JButton sheet;
  private final JButton replay;
  private final JButton showed;
  private List<SetEntry> shown = List.of();
  private boolean onPowerUps;
  private boolean busy;

  public HomePage(Tools tools) {
    this.tools = tools;
    words = tools.words();
    presenter = new HomePresenter(words, tools.numbers(), ZoneId.systemDefault());
    Pieces pieces = tools.pieces();
    page = pieces.page("home", new BorderLayout(18, 10));
    sets = new RowList("home.sets", pieces, tools.palette(), index -> turn());
    powerUps = new RowList("home.powerUps", pieces, tools.palette(), index -> {});
    powerUps.whenOpened(() -> choose(3));
    name = pieces.label("home-name", " ", true, 26);
    trouble = pieces.prose("home-trouble", "", WindowTheme.READING_POINTS, Pieces.WIDTH);
    start = pieces.main("home.start", this::goOn);
    sheet = pieces.plain("home.sheet", () -> choose(1));
    replay = pieces.plain("home.replay", () -> choose(2));
    showed = pieces.plain("home.showed", () -> choose(3));
    reminder = new ReminderBar(tools, this::probeBox);
    facts = new SetFacts(tools, presenter, this::set);
    layOut(pieces);
  }

  private void layOut(Pieces pieces) {
    JPanel top = pieces.clear(new BorderLayout(0, 8));
    JPanel titles = pieces.clear(new BorderLayout());
    titles.add(pieces.label("home-title", words.get("home.title"), true, 28), BorderLayout.WEST);
    titles.add(
        pieces.quiet("home-log", tools.desk().home().shown(tools.desk().log()), 15),
        BorderLayout.EAST);
    top.add(titles, BorderLayout.NORTH);
    top.add(reminder.component(), BorderLayout.CENTER);
    top.add(trouble, BorderLayout.SOUTH);
    trouble.setVisible(false);
    JPanel left = pieces.clear(new BorderLayout(0, 10));
    left.setPreferredSize(new Dimension(450, 100));
    left.add(sets.component(), BorderLayout.CENTER);
    left.add(pieces.plain("home.new", () -> choose(5)), BorderLayout.SOUTH);
    JPanel chosen = pieces.clear(new BorderLayout(0, 6));
    chosen.add(name, BorderLayout.NORTH);
    chosen.add(facts.text(), BorderLayout.SOUTH);
    JPanel act = pieces.clear(new FlowLayout(FlowLayout.LEFT, 12, 4));
    act.add(start);
    act.add(sheet);
    act.add(facts.scenarios());
    chosen.add(act, BorderLayout.CENTER);
    JPanel right = pieces.sheet("home-set", new BorderLayout(0, 10));
    right.add(chosen, BorderLayout.NORTH);
    right.add(powerUps.component(), BorderLayout.CENTER);
    right.add(pieces.row(replay, showed), BorderLayout.SOUTH);
    JPanel middle = pieces.clear(new BorderLayout(18, 10));
    middle.add(left, BorderLayout.WEST);
    middle.add(right, BorderLayout.CENTER);
    JPanel bottom =
        pieces.ends(
            new JComponent[] {
              pieces.plain("home.probe", () -> choose(6)),
              pieces.plain("home.look", () -> choose(7))
            },
            new JComponent[] {pieces.plain("home.close", this::back)});
    bottom.setBorder(BorderFactory.createEmptyBorder(4, 0, 0, 0));
    page.add(top, BorderLayout.NORTH);
    page.add(PageRoom.middle(middle, null), BorderLayout.CENTER);
    page.add(bottom, BorderLayout.SOUTH);
  }

  @Override
  public String name() {
    return "home";
  }

  @Override
  public String title() {
    return words.get("home.windowTitle");
  }

  @Override
  public JComponent component() {
    return page;
  }

  @Override
  public void shown() {
    busy = false;
    Desk desk = tools.desk();
    reminder.look();
    tools
        .shell()
        .aside(
            () -> new BenchSets(desk).list(words.get("home.emulated")), this::show, this::failed);
    say(desk.trouble() == null ? null : desk.trouble().in(words.locale()));
  }

  private void show(List<SetEntry> found) {
    shown = List.copyOf(found);
    sets.show(found.stream().map(presenter::set).toList(), words.get("flow.home.sets"));
    turn();
    PowerUpEntry next = powerUp();
    if (next != null && tools.desk().warms()) {
      new ReplayWarming(tools.desk(), tools).aside(set().log(), next.number());
    }
  }

  private void failed(Exception failure) {
    busy = false;
    say(tools.why(failure));
  }

  private void say(String text) {
    trouble.setVisible(text != null);
    Pieces.say(trouble, text == null ? "" : text, Pieces.WIDTH);
    page.revalidate();
  }

  private SetEntry set() {
    int at = sets.chosen();
    return at < 0 || at >= shown.size() ? null : shown.get(at);
  }

  private PowerUpEntry powerUp() {
    int at = powerUps.chosen();
    SetEntry set = set();
    return set == null || at < 0 || at >= set.powerUps().size() ? null : set.powerUps().get(at);
  }

  /** Another set was chosen. */
  private void turn() {
    SetEntry set = set();
    if (set == null) {
      return;
    }
    boolean emulated = set.kind() == SetEntry.Kind.EMULATED;
    name.setText(presenter.set(set).main());
    start.setText(
        words.get(
            emulated
                ? "flow.home.try"
                : set.kind() == SetEntry.Kind.BEGUN ? "flow.home.goOn" : "flow.home.start"));
    sheet.setVisible(set.kind() == SetEntry.Kind.REAL);
    facts.scenarios().setVisible(emulated);
    powerUps.show(
        set.powerUps().stream().map(presenter::powerUp).toList(), words.get("flow.home.powerUps"));
    replay.setEnabled(!set.powerUps().isEmpty());
    showed.setEnabled(!set.powerUps().isEmpty());
    if (set.kind() == SetEntry.Kind.REAL) {
      tools
          .shell()
          .aside(
              () -> new BenchSets(tools.desk()).sheetOf(set),
              json -> {
                if (set == set()) {
                  facts.say(json);
                }
              },
              this::failed);
    } else {
      facts.describe();
    }
  }

  @Override
  public void move(int by) {
    (onPowerUps ? powerUps : sets).move(by);
  }

  @Override
  public void across(int by) {
    onPowerUps = by > 0 && powerUp() != null;
    (onPowerUps ? powerUps : sets).list().requestFocusInWindow();
  }

  @Override
  public void goOn() {
    SetEntry set = set();
    if (set == null || busy) {
      return;
    }
    switch (set.kind()) {
      case EMULATED -> {
        String each = facts.scenario();
        watch(() -> tools.desk().startEmulated(each));
      }
      case BEGUN -> tools.shell().open(new QuestionsPage(tools, set.begunJson()));
      case REAL ->
          aside(
              () -> new BenchSets(tools.desk()).sheetOf(set),
              json -> tools.shell().open(new ReadyPage(tools, json)));
    }
  }

  private <T> void aside(
      java.util.concurrent.Callable<T> task, java.util.function.Consumer<T> then) {
    busy = true;
    tools.shell().aside(task, then, this::failed);
  }

  private void watch(java.util.concurrent.Callable<Watched> start) {
    aside(start, watched -> tools.shell().open(new WatchPage(tools, watched)));
  }

  @Override
  public void choose(int number) {
    SetEntry set = set();
    PowerUpEntry entry = powerUp();
    if (busy) {
      return;
    }
    switch (number) {
      case 1 -> {
        if (set != null && set.kind() == SetEntry.Kind.REAL) {
          aside(
              () -> new BenchSets(tools.desk()).sheetOf(set),
              json -> tools.shell().open(new FormPage(tools, json)));
        }
      }
      case 2 -> {
        if (entry != null) {
          watch(() -> tools.desk().replay(set.log(), entry.number()));
        }
      }
      case 3 -> {
        if (entry != null) {
          tools.shell().open(new VerdictPage(tools, set.log(), (int) entry.number()));
        }
      }
      case 5 -> tools.shell().open(new QuestionsPage(tools, null));
      case 6 -> probeBox();
      case 7 -> tools.shell().open(new LookPage(tools));
      default -> {}
    }
  }

  private void probeBox() {
    tools.shell().open(new ProbePage(tools));
  }

  @Override
  public void back() {
    tools.shell().close();
  }

  /** Whether the bench log was read. */
  public boolean ready() {
    return !shown.isEmpty() && !busy;
  }
}
