package firstamp.window;

import firstamp.session.BenchMode;
import firstamp.session.BenchSession;
import firstamp.session.LimitMove;
import firstamp.session.Snapshot;
import firstamp.window.BenchView.LinkView;
import firstamp.window.BenchView.QuestionView;
import java.awt.BorderLayout;
import java.awt.CardLayout;
import java.util.ArrayList;
import java.util.List;
import javax.swing.BorderFactory;
import javax.swing.Box;
import javax.swing.BoxLayout;
import javax.swing.JComponent;
import javax.swing.JPanel;

/** Everything inside the window, and what controls and keys do. Swing thread only. */
final class BenchPanel implements BenchActions {
  private static final int NONE_SEEN = -1;
  private static final String STRIPS = "strips";
  private static final String QUESTION = "question";
  private static final String TRIP = "trip";
  private static final String OTHERS = "others";
  private static final String RESTORE_ID = "window.restore";
  private static final String CLOSE_ID = "window.close";
  private static final String LIMIT_ID = "window.limit";
  private static final String WHAT_IF = "what-if";
  private static final String NOTES = "notes";

  /** So long a line says what became of a moved limit. */
  private static final double MOVED_SAID_MS = 10_000;

  private final BenchSession session;
  private final BenchPresenter presenter;
  private final Words words;
  private final TimeView time = new TimeView();
  private final JPanel panel = new JPanel(new BorderLayout(10, 8));
  private final CardLayout cards = new CardLayout();
  private final JPanel middle = new JPanel(cards);
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
  private final OthersCard others;
  private final ReplayBar replay;
  private final LimitPresenter limits;
  private final WhatIfPresenter whatIfs;
  private final SideBySideCard whatIf;
  private final NotesCard notes;
  private final ModePresenter modes;
  private final Runnable close;
  private BenchView view;
  private Snapshot last;
  private LimitMove widerAsked;
  private Snapshot.Moved moved;
  private double movedMs;
  private boolean soakAsked;
  private String awakeSaid;
  private BenchMode.State mode = BenchMode.State.BEGIN;
  private String modeWords;
  private double modeSaidMs;
  private boolean whatIfShown;
  private boolean besideThere;
  private boolean notesShown;
  private Snapshot.WhatIf whatIfSeen;
  private int pedalTaps;
  private String pointed;
  private String card = STRIPS;
  private boolean tripShown;
  private int tripSeen = NONE_SEEN;
  private boolean moreShown;
  private boolean restoreAsked;
  private boolean closeAsked;
  private boolean over;
  private Runnable verdict;
  private Runnable home;

  BenchPanel(BenchSession session, BenchPresenter presenter, Palette palette, Runnable close) {
    this.session = session;
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
    whatIfs = new WhatIfPresenter(words, numbers, presenter.sentences());
    whatIf = new SideBySideCard(palette, words);
    notes = new NotesCard(palette, words, numbers, this::keepNote);
    controls = new ControlColumn(palette, words, this);
    questions = new QuestionCard(palette, words, this::answer);
    trip = new TripCanvas(palette, words, numbers);
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
    middle.setOpaque(false);
    middle.add(strips.component(), STRIPS);
    middle.add(questions.component(), QUESTION);
    middle.add(trip.component(), TRIP);
    middle.add(others.component(), OTHERS);
    middle.add(whatIf.component(), WHAT_IF);
    middle.add(notes.component(), NOTES);
    JPanel south = new JPanel(new BorderLayout(0, 4));
    south.setOpaque(false);
    south.add(views.component(), BorderLayout.NORTH);
    south.add(replay.component(), BorderLayout.CENTER);
    replay.component().setVisible(false);
    panel.setName("bench");
    panel.setBackground(WindowTheme.colour(palette.ground()));
    panel.setBorder(BorderFactory.createEmptyBorder(6, 10, 8, 10));
    panel.add(top, BorderLayout.NORTH);
    panel.add(middle, BorderLayout.CENTER);
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
    over = now.phase() == Snapshot.Phase.ENDED || now.kind() == Snapshot.Kind.REPLAY;
    sentence.show(view.sentence());
    others.show(view.folded());
    moreShown &= !view.folded().isEmpty();
    awakeSaid = awake;
    header.show(withFocus(withMode(view, now), focused));
    figures.show(view.figures());
    if (view.controls().restore() == null) {
      restoreAsked = false;
    }
    openNewTrip(now);
    trip.show(view.trip());
    QuestionView question = question();
    if (question != null) {
      questions.show(question);
    }
    WhatIfPresenter.Sides sides = whatIfs.sides(now);
    whatIf.show(sides);
    besideThere = sides != null;
    whatIfShown &= besideThere;
    notes.show(now);
    turnTo(cardFor(question));
    controls.show(view, verdict != null && over && question == null);
    views.show(view.trip() != null, card.equals(TRIP), card.equals(STRIPS), time.follows());
    views.modes(ModePresenter.offered(now) && card.equals(STRIPS), mode.mode());
    views.more(!armed() && !now.marks().isEmpty(), notesShown, besideThere, card.equals(WHAT_IF));
    more.button().setVisible(!view.folded().isEmpty());
    more.text(
        moreShown ? words.get("control.less") : words.get("control.more", view.folded().size()));
    replay.component().setVisible(view.replay() != null);
    if (view.replay() != null) {
      replay.show(view.replay());
    }
    views.say(pointed != null ? pointed : idleLine());
    strips.show(now);
  }

  private String cardFor(QuestionView question) {
    if (question != null) {
      return QUESTION;
    }
    return moreShown
        ? OTHERS
        : notesShown ? NOTES : whatIfShown ? WHAT_IF : tripShown ? TRIP : STRIPS;
  }

  /** What changed since the snapshot before that somebody has to act on. */
  private void follow(Snapshot now) {
    last = now;
    if (now.beside().pedalTaps() != pedalTaps) {
      pedalTaps = now.beside().pedalTaps();
      yes();
    }
    mode = session.mode();
    if (mode.words() != null && !mode.words().equals(modeWords)) {
      modeSaidMs = now.nowMs();
    }
    modeWords = mode.words();
    soakAsked &= ModePresenter.offered(now);
    if (now.beside().moved() != moved) {
      moved = now.beside().moved();
      movedMs = now.nowMs();
    }
    if (now.beside().whatIf() != whatIfSeen) {
      whatIfShown |= whatIfSeen == null;
      tripShown &= !whatIfShown;
      whatIfSeen = now.beside().whatIf();
    }
    // While something can be switched off every key is the bench's: no typing then.
    notesShown &= !view.controls().off();
  }

  private String idleLine() {
    if (modeWords != null && last.nowMs() - modeSaidMs < MOVED_SAID_MS) {
      return modeWords;
    }
    if (moved != null && last.nowMs() - movedMs < MOVED_SAID_MS) {
      return limits.became(last, moved);
    }
    return view.replay() != null || view.controls().off() && view.questions().isEmpty()
        ? words.get("pointer.none")
        : view.closing();
  }

  private BenchView withMode(BenchView shown, Snapshot now) {
    LinkView state = modes.state(now, mode);
    if (state == null) {
      return shown;
    }
    List<LinkView> links = new ArrayList<>(List.of(state));
    links.addAll(shown.links());
    return shown.withLinks(links);
  }

  private BenchView withFocus(BenchView shown, boolean focused) {
    if (focused || !shown.controls().off()) {
      return shown;
    }
    List<LinkView> links = new ArrayList<>();
    links.add(new LinkView(words.get("focus.lost"), words.get("focus.lost.more"), Tone.CAUTION));
    links.addAll(shown.links());
    return shown.withLinks(links);
  }

  /** A new trip brings its picture up by itself, once. */
  private void openNewTrip(Snapshot now) {
    if (view.trip() == null) {
      tripShown = false;
      tripSeen = NONE_SEEN;
    } else if (now.trip().number() != tripSeen) {
      tripSeen = now.trip().number();
      tripShown = now.kind() != Snapshot.Kind.REPLAY;
    }
  }

  private QuestionView question() {
    if (closeAsked) {
      return new QuestionView(
          CLOSE_ID,
          words.get("ask.close"),
          List.of(words.get("ask.close.1")),
          false,
          words.get("ask.close.yes"),
          words.get("ask.close.no"));
    }
    if (soakAsked) {
      return modes.question();
    }
    if (widerAsked != null) {
      return new QuestionView(
          LIMIT_ID,
          words.get("limit.wider", limits.say(last, widerAsked)),
          List.of(words.get("limit.wider.1"), words.get("limit.wider.2")),
          true,
          words.get("limit.wider.yes"),
          words.get("limit.wider.no"));
    }
    if (restoreAsked) {
      return new QuestionView(
          RESTORE_ID,
          words.get("restore.title"),
          List.of(words.get("restore.1"), words.get("restore.2")),
          true,
          words.get("restore.yes"),
          words.get("restore.no"));
    }
    return view.questions().isEmpty() ? null : view.questions().get(0);
  }

  private void turnTo(String name) {
    if (!name.equals(card)) {
      card = name;
      cards.show(middle, name);
    }
  }

  private void answer(String id, boolean yes) {
    switch (id) {
      case CLOSE_ID -> {
        closeAsked = false;
        if (yes) {
          close.run();
        }
      }
      case ModePresenter.SOAK_ID -> {
        soakAsked = false;
        if (yes) {
          session.mode(BenchMode.SOAK, awakeSaid);
        }
      }
      case LIMIT_ID -> {
        LimitMove move = widerAsked;
        widerAsked = null;
        if (yes && !view.controls().off()) {
          session.limit(move);
        }
      }
      case RESTORE_ID -> {
        restoreAsked = false;
        if (yes && view.controls().restore() != null) {
          session.restore(view.controls().restore());
        }
      }
      default -> session.answer(id, yes);
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
      widerAsked = move;
    } else {
      pointed = words.get("limit.onlyOff", limits.say(last, move));
    }
  }

  private void keepNote(int mark, String text) {
    session.note(mark, text);
  }

  /** Asks whether to switch off and close; the switch stays as it is until the answer. */
  void askClose() {
    closeAsked = true;
  }

  @Override
  public void offOrHold() {
    if (view != null && view.replay() != null) {
      replay.toggle();
    } else {
      restoreAsked = false;
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
    boolean asked = card.equals(QUESTION);
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
    } else if (card.equals(QUESTION)) {
      questions.no();
    }
  }

  @Override
  public void tap() {
    if (card.equals(QUESTION)) {
      questions.yes();
    } else if (view != null && view.replay() != null) {
      replay.jump(true);
    } else if (!seen()) {
      mark();
    }
  }

  @Override
  public void nextLimit() {
    if (card.equals(STRIPS)) {
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
    notesShown = !notesShown && !armed() && last != null && !last.marks().isEmpty();
    if (notesShown) {
      notes.focus();
    } else {
      panel.requestFocusInWindow();
    }
  }

  @Override
  public void toggleWhatIf() {
    whatIfShown = !whatIfShown && besideThere;
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
      soakAsked = true;
    }
  }

  @Override
  public boolean armed() {
    return view != null && view.controls().off();
  }

  @Override
  public void restore() {
    restoreAsked = true;
  }

  @Override
  public void toggleView() {
    tripShown = !tripShown && view != null && view.trip() != null;
    moreShown = false;
  }

  @Override
  public void toggleMore() {
    moreShown = !moreShown;
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
