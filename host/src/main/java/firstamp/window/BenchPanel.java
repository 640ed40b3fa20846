package firstamp.window;

import firstamp.locate.SheetPath;
import firstamp.session.BenchMode;
import firstamp.session.BenchSession;
import firstamp.session.LimitMove;
import firstamp.session.Snapshot;
import firstamp.window.BenchView.QuestionView;
import firstamp.window.MiddleCards.Card;
import java.awt.BorderLayout;
import java.util.List;
import javax.swing.BorderFactory;
import javax.swing.Box;
import javax.swing.BoxLayout;
import javax.swing.JComponent;
import javax.swing.JPanel;

/** Everything inside the window, and what controls and keys do. Swing thread only. */
final class BenchPanel implements BenchActions {
  private final BenchSession session;
  private final Hearing hearing;
  private final BenchPresenter presenter;
  private final Words words;
  private final TimeView time = new TimeView();
  private final JPanel panel = new JPanel(new BorderLayout(10, 8));
  private final MiddleCards middle = new MiddleCards();
  private final ViewRow views;
  private final KeyButton more;
  private final KeyButton homeKey;
  private final KeyButton verdictKey;
  private final HeaderBar header;
  private final SentenceBar sentence;
  private final FigureRow figures;
  private final StripsView strips;
  private final ControlColumn controls;
  private final QuestionCard questions;
  private final TripCanvas trip;
  private final LookCard look;
  private final LookPresenter looks;
  private final OthersCard others;
  private final ReplayBar replay;
  private final LimitPresenter limits;
  private final WhatIfPresenter whatIfs;
  private final SideBySideCard whatIf;
  private final NotesCard notes;
  private final ModePresenter modes;
  private final HeaderStates states;
  private final SaidLine said;
  private final OwnQuestions own = new OwnQuestions();
  private final Runnable close;
  private BenchView view;
  private Snapshot last;
  private String awakeSaid;
  private BenchMode.State mode = BenchMode.State.BEGIN;
  private boolean besideThere;
  private int pedalTaps;
  private String pointed;
  private boolean over;
  private Runnable verdict;
  private Runnable home;
  private Runnable search;
  private Runnable wires;

  BenchPanel(
      BenchSession session,
      Hearing hearing,
      BenchPresenter presenter,
      Palette palette,
      Runnable close) {
    this.session = session;
    this.hearing = hearing;
    this.presenter = presenter;
    this.close = close;
    words = presenter.words();
    Numbers numbers = presenter.numbers();
    header = new HeaderBar(palette);
    more =
        new KeyButton(words, "more", words.get("control.more", 88), "A", this::toggleMore)
            .size(126, 36);
    more.colours(palette.control(), palette.ink());
    homeKey =
        new KeyButton(
                words, "home", words.get("control.home"), words.get("control.home.key"), this::home)
            .size(126, 36);
    homeKey.colours(palette.control(), palette.ink());
    homeKey.button().setVisible(false);
    sentence = new SentenceBar(palette, more.button(), homeKey.button());
    views = new ViewRow(palette, words, this);
    figures = new FigureRow(palette);
    strips = new StripsView(palette, words, numbers, time, this::point, this::moveLimit);
    limits = new LimitPresenter(words, numbers);
    modes = new ModePresenter(words, numbers);
    states = new HeaderStates(words, modes);
    said = new SaidLine(words, limits);
    whatIfs = new WhatIfPresenter(words, numbers, presenter.sentences());
    whatIf = new SideBySideCard(palette, words);
    notes = new NotesCard(palette, words, numbers, this::keepNote);
    controls = new ControlColumn(palette, words, this);
    questions = new QuestionCard(palette, words, this::answer);
    trip = new TripCanvas(palette, words, numbers);
    look = new LookCard(palette, words);
    looks = new LookPresenter(words, numbers);
    others = new OthersCard(palette, words);
    replay = new ReplayBar(palette, words, numbers, session);
    verdictKey =
        new KeyButton(words, "verdict", words.get("control.verdict"), "V", this::next)
            .size(150, 34);
    verdictKey.button().setName("row-verdict");
    verdictKey.colours(palette.control(), palette.ink());
    verdictKey.button().setVisible(false);
    replay.add(verdictKey.button());
    layOut(palette);
  }

  private void layOut(Palette palette) {
    JPanel top = new JPanel();
    top.setLayout(new BoxLayout(top, BoxLayout.Y_AXIS));
    top.setOpaque(false);
    top.add(header.component());
    top.add(Box.createVerticalStrut(4));
    top.add(sentence.component());
    top.add(Box.createVerticalStrut(8));
    top.add(figures.component());
    middle.add(Card.STRIPS, strips.component());
    middle.add(Card.QUESTION, questions.component());
    middle.add(Card.TRIP, trip.component());
    middle.add(Card.LOOK, look.component());
    middle.add(Card.OTHERS, others.component());
    middle.add(Card.WHAT_IF, whatIf.component());
    middle.add(Card.NOTES, notes.component());
    JPanel south = new JPanel(new BorderLayout(0, 4));
    south.setOpaque(false);
    south.add(views.component(), BorderLayout.NORTH);
    south.add(replay.component(), BorderLayout.CENTER);
    replay.component().setVisible(false);
    panel.setName("bench");
    panel.setBackground(WindowTheme.colour(palette.ground()));
    panel.setBorder(BorderFactory.createEmptyBorder(6, 10, 8, 10));
    panel.add(top, BorderLayout.NORTH);
    panel.add(middle.component(), BorderLayout.CENTER);
    panel.add(controls.component(), BorderLayout.EAST);
    panel.add(south, BorderLayout.SOUTH);
  }

  JComponent component() {
    return panel;
  }

  /** What follows once it is over: the verdict, and the way back to the first screen. */
  void whenOver(Runnable toVerdict, Runnable toHome) {
    verdict = toVerdict;
    home = toHome;
    homeKey.button().setVisible(true);
    verdictKey.button().setVisible(true);
  }

  /** What helps to think; the buttons for it are there where the sheet gives something. */
  void whenThinking(Runnable toSearch, Runnable toWires) {
    search = toSearch;
    wires = toWires;
  }

  @Override
  public void search() {
    if (search != null) {
      search.run();
    }
  }

  @Override
  public void wires() {
    if (wires != null) {
      wires.run();
    }
  }

  @Override
  public boolean next() {
    boolean there = verdict != null && over && question() == null;
    if (there) {
      verdict.run();
    }
    return there;
  }

  @Override
  public void home() {
    if (home != null) {
      home.run();
    }
  }

  StripsView strips() {
    return strips;
  }

  TimeView time() {
    return time;
  }

  Words words() {
    return words;
  }

  BenchView view() {
    return view;
  }

  /**
   * Shows a snapshot.
   *
   * @param now what there is to see
   * @param awake why the computer may go to sleep, null = nothing to say
   * @param focused whether the keys reach this window
   */
  void show(Snapshot now, String awake, boolean focused) {
    view = presenter.view(now, awake);
    follow(now);
    over =
        now.phase() == Snapshot.Phase.ENDED && now.powerUp() != null
            || now.kind() == Snapshot.Kind.REPLAY;
    sentence.show(view.sentence());
    others.show(view.folded());
    awakeSaid = awake;
    header.show(states.with(view, now, mode, hearing.state(), focused));
    figures.show(view.figures());
    if (view.controls().restore() == null) {
      own.withdraw(OwnQuestions.Kind.RESTORE);
    }
    trip.show(view.trip());
    look.show(looks.view(now));
    QuestionView question = question();
    if (question != null) {
      questions.show(question);
    }
    WhatIfPresenter.Sides sides = whatIfs.sides(now);
    whatIf.show(sides);
    besideThere = sides != null;
    middle.follow(now, view, besideThere);
    notes.show(now);
    middle.turn(question != null);
    controls.sound(hearing.state());
    // Once it has switched itself off and is over, the column has no room left: the keys stay.
    boolean room = !over || view.controls().restore() == null;
    controls.think(
        room && search != null && SheetPath.hasPath(now.sheet()),
        room && wires != null && !now.sheet().unknownWires().isEmpty());
    controls.show(view, verdict != null && over && question == null);
    views.show(middle.pictures(), middle.next(), middle.shows(Card.STRIPS), time.follows());
    views.modes(ModePresenter.offered(now) && middle.shows(Card.STRIPS), mode.mode());
    views.more(
        !armed() && !now.marks().isEmpty(),
        middle.notes(),
        besideThere,
        middle.shows(Card.WHAT_IF));
    more.button().setVisible(!view.folded().isEmpty());
    more.text(
        middle.more()
            ? words.get("control.less")
            : words.get("control.more", view.folded().size()));
    replay.component().setVisible(view.replay() != null);
    if (view.replay() != null) {
      replay.show(view.replay());
    }
    boolean stripsShown = middle.shows(Card.STRIPS);
    views.say(pointed != null && stripsShown ? pointed : said.line(now, view, stripsShown));
    strips.show(now);
  }

  /** What changed since the snapshot before that somebody has to act on. */
  private void follow(Snapshot now) {
    last = now;
    if (now.beside().pedalTaps() != pedalTaps) {
      pedalTaps = now.beside().pedalTaps();
      yes();
    }
    mode = session.mode();
    said.follow(now, mode);
    if (!ModePresenter.offered(now)) {
      own.withdraw(OwnQuestions.Kind.SOAK);
    }
  }

  private QuestionView question() {
    QuestionView asked = own.first();
    return asked != null ? asked : view.questions().isEmpty() ? null : view.questions().get(0);
  }

  private void answer(String id, boolean yes) {
    if (!own.answer(id, yes)) {
      session.answer(id, yes);
    }
  }

  private void point(String text) {
    pointed = text.equals(words.get("pointer.none")) ? null : text;
  }

  /** Tighter goes to the probe at once; wider only with the switch open, and asks first. */
  private void moveLimit(LimitMove move) {
    boolean open =
        last.phase() != Snapshot.Phase.ON
            && last.phase() != Snapshot.Phase.LOOK
            && last.phase() != Snapshot.Phase.CHECK;
    if (last.kind() == Snapshot.Kind.REPLAY || !move.widens(last.sheet())) {
      session.limit(move);
    } else if (open) {
      own.ask(
          OwnQuestions.Kind.WIDER,
          limits.question(last, move),
          () -> {
            if (!view.controls().off()) {
              session.limit(move);
            }
          });
    } else {
      pointed = words.get("limit.onlyOff", limits.say(last, move));
    }
  }

  private void keepNote(int mark, String text) {
    session.note(mark, text);
  }

  /** Asks whether to switch off and close; the switch stays as it is until the answer. */
  void askClose() {
    own.ask(
        OwnQuestions.Kind.CLOSE,
        new QuestionView(
            OwnQuestions.Kind.CLOSE.id(),
            words.get("ask.close"),
            List.of(words.get("ask.close.1")),
            false,
            words.get("ask.close.yes"),
            words.get("ask.close.no")),
        close);
  }

  @Override
  public void offOrHold() {
    if (view != null && view.replay() != null) {
      replay.toggle();
    } else {
      own.withdraw(OwnQuestions.Kind.RESTORE);
      session.off();
    }
  }

  @Override
  public boolean seen() {
    boolean waits = view != null && view.controls().seen();
    if (waits) {
      session.acknowledge();
    }
    return waits;
  }

  @Override
  public void mark() {
    if (view != null && view.controls().mark()) {
      session.mark("");
    }
  }

  @Override
  public boolean yes() {
    boolean asked = middle.shows(Card.QUESTION);
    if (strips.holdsLimit()) {
      strips.takeLimit(true);
      return true;
    }
    if (asked) {
      questions.yes();
    }
    return asked;
  }

  @Override
  public void no() {
    if (strips.holdsLimit()) {
      strips.takeLimit(false);
    } else if (middle.shows(Card.QUESTION)) {
      questions.no();
    }
  }

  @Override
  public void tap() {
    if (middle.shows(Card.QUESTION)) {
      questions.yes();
    } else if (view != null && view.replay() != null) {
      replay.jump(true);
    } else if (!seen()) {
      mark();
    }
  }

  @Override
  public void nextLimit() {
    if (middle.shows(Card.STRIPS)) {
      strips.nextLimit();
    }
  }

  @Override
  public boolean nudgeLimit(int steps) {
    boolean held = strips.holdsLimit();
    if (held) {
      strips.nudgeLimit(steps);
    }
    return held;
  }

  @Override
  public void toggleNotes() {
    middle.toggleNotes(!armed() && last != null && !last.marks().isEmpty());
    if (middle.notes()) {
      notes.focus();
    } else {
      panel.requestFocusInWindow();
    }
  }

  @Override
  public void toggleWhatIf() {
    middle.toggleWhatIf(besideThere);
  }

  @Override
  public void handsIn() {
    if (last != null && ModePresenter.offered(last)) {
      boolean in = session.mode().mode() == BenchMode.HANDS_IN;
      session.mode(in ? BenchMode.USUAL : BenchMode.HANDS_IN, awakeSaid);
    }
  }

  @Override
  public void soak() {
    if (last == null || !ModePresenter.offered(last)) {
      return;
    }
    if (session.mode().mode() == BenchMode.SOAK) {
      session.mode(BenchMode.USUAL, awakeSaid);
    } else {
      own.ask(
          OwnQuestions.Kind.SOAK, modes.question(), () -> session.mode(BenchMode.SOAK, awakeSaid));
    }
  }

  @Override
  public void toggleSound() {
    hearing.mute(hearing.state() != Hearing.State.MUTED);
  }

  @Override
  public boolean armed() {
    return view != null && view.controls().off();
  }

  @Override
  public void restore() {
    if (last == null || view.controls().restore() == null) {
      return;
    }
    own.ask(
        OwnQuestions.Kind.RESTORE,
        new RestorePresenter(words).question(last),
        () -> {
          if (view.controls().restore() != null) {
            session.restore(view.controls().restore());
          }
        });
  }

  @Override
  public void toggleView() {
    middle.turnPicture();
  }

  @Override
  public void toggleMore() {
    middle.toggleMore();
  }

  @Override
  public void follow() {
    time.follow();
  }

  @Override
  public void zoom(double factor) {
    time.zoom(factor, time.follows() ? time.toMs() : (time.fromMs() + time.toMs()) / 2);
  }

  @Override
  public void pan(double share) {
    time.pan(share);
  }

  @Override
  public void jump(boolean forward) {
    if (view != null && view.replay() != null) {
      replay.jump(forward);
    }
  }

  @Override
  public void step() {
    if (view != null && view.replay() != null) {
      session.step();
    }
  }
}
