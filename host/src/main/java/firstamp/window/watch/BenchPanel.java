package firstamp.window.watch;

import firstamp.app.Hearing;
import firstamp.bench.BenchSession;
import firstamp.bench.Snapshot;
import firstamp.locate.SheetPath;
import firstamp.model.Happening;
import firstamp.model.OffReason;
import firstamp.model.TimeSource;
import firstamp.model.text.Worded;
import firstamp.run.BenchMode;
import firstamp.run.LimitMove;
import firstamp.window.present.BenchPresenter;
import firstamp.window.present.BenchView;
import firstamp.window.present.BenchView.QuestionView;
import firstamp.window.present.HeaderStates;
import firstamp.window.present.LimitPresenter;
import firstamp.window.present.LookPresenter;
import firstamp.window.present.ModePresenter;
import firstamp.window.present.OwnQuestions;
import firstamp.window.present.SaidLine;
import firstamp.window.present.SentencePresenter;
import firstamp.window.present.WhatIfPresenter;
import firstamp.window.strips.StripsView;
import firstamp.window.strips.TimeView;
import firstamp.window.watch.MiddleCards.Card;
import firstamp.window.watch.RefusedKeys.Key;
import firstamp.window.widgets.Palette;
import firstamp.window.words.Numbers;
import firstamp.window.words.Words;
import java.util.List;
import java.util.function.IntConsumer;
import javax.swing.JComponent;

/** The watching page inside the frame, and what its controls and keys do. Swing thread only. */
public final class BenchPanel implements BenchActions {
  private final BenchSession session;
  private final Hearing hearing;
  private final BenchPresenter presenter;
  private final Words words;
  private final TimeView time = new TimeView();
  private final BenchParts parts;
  private final LookPresenter looks;
  private final LimitPresenter limits;
  private final WhatIfPresenter whatIfs;
  private final ModePresenter modes;
  private final HeaderStates states;
  private final SaidLine said;
  private final OwnQuestions own = new OwnQuestions();
  private final RefusedKeys keys;
  private final Refusal refusal;
  private final Runnable close;
  private BenchView view;
  private Snapshot last;
  private Worded awakeSaid;
  private BenchMode.State mode = BenchMode.State.BEGIN;
  private boolean besideThere;
  private String pointed;
  private boolean over;
  private Runnable verdict;
  private Runnable home;
  private Runnable otherPort;
  private Runnable search;
  private Runnable wires;
  private Runnable marker;
  private IntConsumer again;

  public BenchPanel(
      BenchSession session,
      Hearing hearing,
      BenchPresenter presenter,
      Palette palette,
      TimeSource clock,
      Runnable close) {
    this.session = session;
    refusal = new Refusal(clock);
    this.marker = () -> session.mark("");
    this.hearing = hearing;
    this.presenter = presenter;
    this.close = close;
    words = presenter.words();
    Numbers numbers = presenter.numbers();
    limits = new LimitPresenter(words, numbers);
    modes = new ModePresenter(words, numbers);
    states = new HeaderStates(words, modes);
    said = new SaidLine(words, limits);
    whatIfs = new WhatIfPresenter(words, numbers);
    looks = new LookPresenter(words, numbers);
    keys = new RefusedKeys(words);
    parts =
        new BenchParts(
            presenter,
            palette,
            time,
            this,
            new BenchParts.Hands() {
              @Override
              public void point(String text) {
                pointed = text.equals(words.get("pointer.none")) ? null : text;
              }

              @Override
              public void move(LimitMove move) {
                moveLimit(move);
              }

              @Override
              public void answer(String id, boolean yes) {
                if (!own.answer(id, yes)) {
                  session.answer(id, yes);
                }
              }
            },
            session);
  }

  public JComponent component() {
    return parts.panel;
  }

  /** What lies under OFF. */
  public JComponent controls() {
    return parts.controls.component();
  }

  /** What lies at the right of the sentence. */
  public JComponent sentenceKeys() {
    return parts.sentenceKeys;
  }

  /** What follows once it is over: the verdict, and the way back to the first screen. */
  public void whenOver(Runnable toVerdict, Runnable toHome) {
    verdict = toVerdict;
    home = toHome;
    parts.controls.home(true);
    parts.verdictKey.button().setVisible(true);
  }

  /** Where another port can be chosen. */
  public void whenPortRefused(Runnable toPorts) {
    otherPort = toPorts;
  }

  /** What asks before it is switched on again after the trip of this number. */
  public void whenAgain(IntConsumer toAgain) {
    again = toAgain;
  }

  /** What helps to think; the buttons for it are there where the sheet gives something. */
  public void whenThinking(Runnable toSearch, Runnable toWires) {
    search = toSearch;
    wires = toWires;
  }

  /** Who puts a mark. */
  public void whenMarking(Runnable toMark) {
    marker = toMark;
  }

  /** Shows below the strips why a key does nothing, until one does something. */
  public void refuse(String why) {
    refusal.say(why);
  }

  private boolean can(Key key) {
    if (last == null) {
      return false;
    }
    String why = keys.why(key, state());
    refuse(why);
    return why == null;
  }

  private RefusedKeys.State state() {
    RefusedKeys.Strips strips =
        !parts.middle.shows(Card.STRIPS)
            ? RefusedKeys.Strips.HIDDEN
            : parts.strips.limits().isEmpty()
                ? RefusedKeys.Strips.WITHOUT_LIMIT
                : RefusedKeys.Strips.WITH_LIMIT;
    return new RefusedKeys.State(
        last,
        view,
        question() != null,
        strips,
        parts.middle.pictures(),
        besideThere,
        over,
        hearing.state(),
        awakeSaid);
  }

  @Override
  public void search() {
    if (search != null && can(Key.SEARCH)) {
      search.run();
    }
  }

  @Override
  public void wires() {
    if (wires != null && can(Key.WIRES)) {
      wires.run();
    }
  }

  @Override
  public boolean next() {
    // Without a log there is no result to open: then nothing waits for Enter.
    boolean there = can(verdict == null ? Key.ANSWER : Key.RESULT);
    if (there) {
      verdict.run();
    }
    return there;
  }

  @Override
  public boolean otherPort() {
    boolean offered = portRefused();
    if (offered) {
      otherPort.run();
    }
    return offered;
  }

  private boolean portRefused() {
    return otherPort != null && last != null && last.beside().neverAnswered();
  }

  @Override
  public void home() {
    if (home != null) {
      home.run();
    }
  }

  public StripsView strips() {
    return parts.strips;
  }

  public TimeView time() {
    return time;
  }

  Words words() {
    return words;
  }

  public BenchView view() {
    return view;
  }

  /**
   * Shows a snapshot.
   *
   * @param now what there is to see
   * @param awake why the computer may go to sleep, null = nothing to say
   * @param focused whether the keys reach this window
   */
  public void show(Snapshot now, Worded awake, boolean focused) {
    look(now, awake, focused);
    over =
        now.phase() == Snapshot.Phase.ENDED && now.powerUp() != null
            || now.kind() == Snapshot.Kind.REPLAY;
    parts.others.show(view.folded());
    parts.trip.show(view.trip());
    parts.look.show(looks.view(now));
    QuestionView question = question();
    if (question != null) {
      parts.questions.show(question);
    }
    WhatIfPresenter.Sides sides = whatIfs.sides(now);
    parts.whatIf.show(sides);
    besideThere = sides != null;
    parts.middle.follow(now, view, besideThere);
    parts.notes.show(now);
    parts.middle.turn(question != null);
    parts.controls.sound(hearing.state());
    parts.controls.think(
        search != null && SheetPath.hasPath(now.sheet()),
        wires != null && !now.sheet().unknownWires().isEmpty());
    parts.controls.show(view, verdict != null && over && question == null);
    parts.views.show(
        parts.middle.pictures(),
        parts.middle.next(),
        parts.middle.shows(Card.STRIPS),
        time.follows());
    parts.views.modes(ModePresenter.offered(now) && parts.middle.shows(Card.STRIPS), mode.mode());
    parts.views.more(
        !armed() && !now.marks().isEmpty(),
        parts.middle.notes(),
        besideThere,
        parts.middle.shows(Card.WHAT_IF));
    parts.otherPort.button().setVisible(portRefused());
    parts.restore.button().setVisible(view.controls().restore() != null);
    parts.more.button().setVisible(!view.folded().isEmpty());
    parts.more.text(
        parts.middle.more()
            ? words.get("control.less")
            : words.get("control.more", view.folded().size()));
    // A replay has no column of controls.
    parts.homeKey.button().setVisible(home != null && view.replay() != null);
    parts.replay.component().setVisible(view.replay() != null);
    if (view.replay() != null) {
      parts.replay.show(view.replay());
    }
    boolean stripsShown = parts.middle.shows(Card.STRIPS);
    String why = refusal.now();
    parts.views.say(
        why != null
            ? why
            : pointed != null && stripsShown ? pointed : said.line(now, view, stripsShown));
    parts.strips.show(now);
  }

  /** Takes a snapshot without showing it here: what the frame shows of it is {@link #view()}. */
  public void look(Snapshot now, Worded awake, boolean focused) {
    awakeSaid = awake;
    follow(now);
    view = states.with(presenter.view(now, awake), now, mode, hearing.state(), focused);
  }

  /** What changed since the snapshot before that somebody has to act on. */
  private void follow(Snapshot now) {
    if (last != null && last.phase() != now.phase()) {
      refuse(null);
    }
    last = now;
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
      refuse(words.get("limit.onlyOff", limits.say(last, move)));
    }
  }

  /** Asks whether to switch off and leave; the switch stays as it is until the answer. */
  public void askClose() {
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

  /** It is left as soon as the rails are down. */
  public void leaving() {
    said.leaving(words.get("leave.waits"));
  }

  /** Whether a digit answers something here. */
  public boolean wantsDigits() {
    return parts.middle.shows(Card.QUESTION) || parts.strips.holdsLimit();
  }

  /** It is switched off, by whatever. */
  public void off() {
    session.off();
  }

  @Override
  public void offOrHold() {
    can(Key.OFF);
    if (view != null && view.replay() != null) {
      parts.replay.toggle();
    } else {
      // Asked of the probe box whatever is thought of its switch.
      off();
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
    if (can(Key.MARK)) {
      marker.run();
    }
  }

  @Override
  public void changed() {
    if (can(Key.SAY)) {
      session.happened(new Happening.SetChanged(""));
    }
  }

  @Override
  public void recording() {
    if (can(Key.SAY)) {
      Happening.RecordState next =
          switch (session.snapshot().beside().recording()) {
            case UNKNOWN -> Happening.RecordState.ON;
            case ON -> Happening.RecordState.OFF;
            case OFF -> Happening.RecordState.UNKNOWN;
          };
      session.happened(new Happening.Recording(next));
    }
  }

  @Override
  public boolean yes() {
    boolean asked = parts.middle.shows(Card.QUESTION);
    if (parts.strips.holdsLimit()) {
      parts.strips.takeLimit(true);
      return true;
    }
    if (asked) {
      parts.questions.yes();
    }
    return asked;
  }

  @Override
  public boolean goOn() {
    return !own.asks(OwnQuestions.Kind.CLOSE) && yes();
  }

  @Override
  public void why(int number) {
    if (last != null && question() == null && SentencePresenter.asksWhy(last)) {
      refuse(null);
      session.explainOff(OffReason.values()[number - 1]);
    } else {
      can(Key.ANSWER);
    }
  }

  @Override
  public void hold(boolean down) {
    parts.questions.hold(down);
  }

  @Override
  public void no() {
    if (parts.strips.holdsLimit()) {
      parts.strips.takeLimit(false);
    } else if (parts.middle.shows(Card.QUESTION)) {
      parts.questions.no();
    } else {
      home();
    }
  }

  @Override
  public void nextLimit() {
    if (can(Key.LIMIT)) {
      parts.strips.nextLimit();
    }
  }

  @Override
  public boolean nudgeLimit(int steps) {
    boolean held = parts.strips.holdsLimit();
    if (held) {
      refuse(null);
      parts.strips.nudgeLimit(steps);
    }
    return held;
  }

  @Override
  public void toggleNotes() {
    parts.middle.toggleNotes(can(Key.NOTES));
    if (parts.middle.notes()) {
      // A field that is not on the screen yet takes no caret.
      parts.middle.turn(question() != null);
      parts.notes.focus();
    } else {
      parts.panel.requestFocusInWindow();
    }
  }

  @Override
  public void toggleWhatIf() {
    can(Key.WHAT_IF);
    parts.middle.toggleWhatIf(besideThere);
  }

  @Override
  public void handsIn() {
    if (can(Key.HANDS_IN)) {
      boolean in = session.mode().mode() == BenchMode.HANDS_IN;
      session.mode(in ? BenchMode.USUAL : BenchMode.HANDS_IN, awakeSaid);
    }
  }

  @Override
  public void soak() {
    if (last != null && ModePresenter.offered(last) && session.mode().mode() == BenchMode.SOAK) {
      session.mode(BenchMode.USUAL, awakeSaid);
    } else if (can(Key.SOAK)) {
      own.ask(
          OwnQuestions.Kind.SOAK, modes.question(), () -> session.mode(BenchMode.SOAK, awakeSaid));
    }
  }

  @Override
  public void toggleSound() {
    if (can(Key.SOUND)) {
      hearing.mute(hearing.state() != Hearing.State.MUTED);
    }
  }

  private boolean armed() {
    return view != null && view.controls().off();
  }

  @Override
  public void restore() {
    if (again != null && can(Key.RESTORE)) {
      again.accept(view.controls().restore());
    }
  }

  @Override
  public void toggleView() {
    can(Key.PICTURE);
    parts.middle.turnPicture();
  }

  @Override
  public void toggleMore() {
    can(Key.MORE);
    parts.middle.toggleMore();
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
    if (can(Key.REPLAY)) {
      parts.replay.jump(forward);
    }
  }

  @Override
  public void step() {
    if (can(Key.REPLAY)) {
      session.step();
    }
  }
}
