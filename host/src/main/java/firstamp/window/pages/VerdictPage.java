package firstamp.window.pages;

import firstamp.app.Desk;
import firstamp.app.Watched;
import firstamp.log.PowerUpEntry;
import firstamp.study.ToldWords;
import firstamp.window.page.Page;
import firstamp.window.page.Tools;
import firstamp.window.present.HomePresenter;
import firstamp.window.present.VerdictPresenter;
import firstamp.window.widgets.Canvas;
import firstamp.window.widgets.Pieces;
import firstamp.window.widgets.StateShape;
import firstamp.window.widgets.Tone;
import firstamp.window.widgets.WindowTheme;
import firstamp.window.words.Signs;
import firstamp.window.words.Words;
import java.awt.BorderLayout;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import javax.swing.JButton;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JTextArea;
import javax.swing.JTextField;

/** What a power-up showed, and what to do with it: Enter saves the report. */
public final class VerdictPage implements Page {
  private static final int TEXT_WIDTH = 1160;

  private final Tools tools;
  private final Words words;
  private final Pieces pieces;
  private final Path log;
  private final int number;
  private final WatchPage watching;
  private final Watched.Again again;
  private final VerdictPresenter presenter;
  private final HomePresenter home;
  private final JPanel page;
  private final JPanel head;
  private final JLabel title;
  private final JLabel about;
  private final Canvas shape;
  private final JTextArea lines;
  private final JTextField file = new JTextField(40);
  private final JTextArea said;
  private final JButton save;
  private final JButton good;
  private final JButton found;
  private Tone tone = Tone.PLAIN;
  private Desk.Showing showing;
  private boolean knownGood;
  private boolean asFound;
  private boolean busy;

  /** Of a stored power-up. */
  public VerdictPage(Tools tools, Path log, int number) {
    this(tools, log, number, null, null);
  }

  /** Of the power-up that was just watched. */
  public VerdictPage(Tools tools, Watched watched, int number, WatchPage watching) {
    this(tools, watched.log(), number, watching, watched.again());
  }

  private VerdictPage(Tools tools, Path log, int number, WatchPage watching, Watched.Again again) {
    this.tools = tools;
    this.log = log;
    this.number = number;
    this.watching = watching;
    this.again = again;
    words = tools.words();
    pieces = tools.pieces();
    home = new HomePresenter(words, tools.numbers(), ZoneId.systemDefault());
    presenter = new VerdictPresenter(words, tools.numbers(), home);
    page = pieces.page("verdict", new BorderLayout(0, 12));
    head = pieces.sheet("verdict-head", new BorderLayout(14, 2));
    title =
        pieces.label("verdict-title", words.get("verdict.reading"), true, WindowTheme.FAR_POINTS);
    about = pieces.label("verdict-about", " ", false, WindowTheme.READING_POINTS);
    lines = pieces.prose("verdict-lines", "", 22, TEXT_WIDTH);
    said = pieces.prose("verdict-said", "", WindowTheme.READING_POINTS, TEXT_WIDTH);
    save = pieces.main("verdict.save", this::goOn);
    good = pieces.plain("verdict.good", () -> choose(2));
    found = pieces.plain("verdict.found", () -> choose(3));
    shape = StateShape.canvas("verdict-shape", tools.palette(), () -> tone);
    shape.say(words.get("verdict.state"));
    layOut();
  }

  private void layOut() {
    head.add(shape, BorderLayout.WEST);
    JPanel titles = pieces.clear(new BorderLayout());
    titles.add(title, BorderLayout.NORTH);
    titles.add(about, BorderLayout.SOUTH);
    head.add(titles, BorderLayout.CENTER);
    JPanel bottom = pieces.clear(new BorderLayout(0, 8));
    JPanel saving = pieces.clear(new BorderLayout(0, 6));
    saving.add(said, BorderLayout.NORTH);
    said.setVisible(false);
    saving.add(ReportTarget.row(pieces, words, file), BorderLayout.CENTER);
    bottom.add(saving, BorderLayout.NORTH);
    List<JComponent> row = new ArrayList<>(List.of(save));
    row.add(pieces.plain(watching == null ? "verdict.replay" : "verdict.strips", () -> choose(1)));
    row.add(good);
    row.add(found);
    if (again != null) {
      row.add(pieces.plain("verdict.again", () -> choose(4)));
    }
    bottom.add(
        pieces.ends(
            row.toArray(new JComponent[0]),
            new JComponent[] {pieces.plain("verdict.home", this::back)}),
        BorderLayout.SOUTH);
    page.add(head, BorderLayout.NORTH);
    page.add(ReadingPane.of(lines, TEXT_WIDTH), BorderLayout.CENTER);
    page.add(bottom, BorderLayout.SOUTH);
    able(false);
  }

  private void able(boolean there) {
    save.setEnabled(there);
    good.setEnabled(there);
    found.setEnabled(there);
    file.setEnabled(there);
  }

  @Override
  public String name() {
    return "verdict";
  }

  @Override
  public String title() {
    return words.get("verdict.windowTitle", title.getText());
  }

  @Override
  public JComponent component() {
    return page;
  }

  @Override
  public void shown() {
    if (showing == null) {
      tools.shell().aside(() -> tools.desk().showing(log, number), this::show, this::failed);
    }
  }

  /** What was read, for the page and for its pictures. */
  void show(Desk.Showing read) {
    showing = read;
    PowerUpEntry entry = read.study().entry();
    knownGood = entry.baseline();
    asFound = entry.asFound();
    tone = presenter.tone(read.study().summary());
    int ink = tools.palette().inkOn(tone);
    title.setText(presenter.headline(read.study().summary(), read.study().verdict()));
    about.setText(
        words.get(
            "verdict.about",
            read.study().sheet().set().name(),
            home.powerUp(entry).main(),
            home.powerUp(entry).more()));
    title.setForeground(WindowTheme.colour(ink));
    about.setForeground(WindowTheme.colour(ink));
    head.setBackground(WindowTheme.colour(tools.palette().groundOf(tone)));
    List<String> text =
        new ArrayList<>(
            presenter.sentences(
                read.study().verdict(), read.study().summary(), read.study().sheet()));
    text.addAll(new ToldWords(words.locale(), ZoneId.systemDefault()).lines(read.study().told()));
    read.found().forEach(line -> text.add(Signs.in(line)));
    for (Desk.Against against : read.against()) {
      text.add("");
      text.addAll(presenter.changes(against, read.study().sheet()));
    }
    Pieces.say(lines, String.join("\n", text), TEXT_WIDTH);
    lines.setCaretPosition(0);
    file.setText(tools.desk().home().shown(tools.desk().reportFile(read.study())));
    flags();
    able(true);
    page.revalidate();
    page.repaint();
  }

  /** Whether the power-up was read. */
  public boolean ready() {
    return showing != null;
  }

  private void flags() {
    good.setText(words.get(knownGood ? "flow.verdict.notGood" : "flow.verdict.good"));
    found.setText(words.get(asFound ? "flow.verdict.notFound" : "flow.verdict.found"));
  }

  private void failed(Exception failure) {
    busy = false;
    say(
        failure instanceof FileAlreadyExistsException
            ? words.get("verdict.fileThere", file.getText())
            : tools.why(failure));
  }

  private void say(String text) {
    Pieces.say(said, text, TEXT_WIDTH);
    said.setVisible(true);
    page.revalidate();
  }

  /** Saves the report; a file that is there already is left alone. */
  @Override
  public void goOn() {
    if (showing == null || busy) {
      return;
    }
    busy = true;
    Path to = tools.desk().home().typed(file.getText());
    Desk desk = tools.desk();
    tools
        .shell()
        .aside(
            () -> {
              desk.report(showing, to);
              return to;
            },
            written -> {
              busy = false;
              say(words.get("verdict.saved", tools.desk().home().shown(written)));
              page.requestFocusInWindow();
            },
            this::failed);
  }

  @Override
  public void choose(int choice) {
    switch (choice) {
      case 1 -> strips();
      case 2 -> flag(!knownGood, asFound);
      case 3 -> flag(knownGood, !asFound);
      case 4 -> startAgain();
      default -> {}
    }
  }

  private void strips() {
    if (watching != null) {
      tools.shell().open(watching);
    } else if (!busy) {
      busy = true;
      tools
          .shell()
          .aside(
              () -> tools.desk().replay(log, number),
              watched -> tools.shell().open(new WatchPage(tools, watched)),
              this::failed);
    }
  }

  private void flag(boolean goodNow, boolean foundNow) {
    if (showing == null) {
      return;
    }
    tools
        .shell()
        .aside(
            () -> {
              tools.desk().flag(log, number, foundNow, goodNow);
              return true;
            },
            done -> {
              knownGood = goodNow;
              asFound = foundNow;
              flags();
            },
            this::failed);
  }

  private void startAgain() {
    if (again == null || busy) {
      return;
    }
    busy = true;
    tools
        .shell()
        .aside(
            () -> {
              end();
              return again.start(0);
            },
            watched -> tools.shell().open(new WatchPage(tools, watched)),
            this::failed);
  }

  @Override
  public void end() {
    if (watching != null) {
      watching.end();
    }
  }

  @Override
  public void back() {
    tools.shell().home();
  }
}
