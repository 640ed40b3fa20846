package firstamp.window.watch;

import firstamp.bench.BenchSession;
import firstamp.run.LimitMove;
import firstamp.window.present.BenchPresenter;
import firstamp.window.strips.StripsView;
import firstamp.window.strips.TimeView;
import firstamp.window.strips.TripCanvas;
import firstamp.window.watch.MiddleCards.Card;
import firstamp.window.widgets.KeyButton;
import firstamp.window.widgets.LeastFirst;
import firstamp.window.widgets.Palette;
import firstamp.window.widgets.WindowTheme;
import firstamp.window.words.Numbers;
import firstamp.window.words.Words;
import java.awt.BorderLayout;
import javax.swing.JPanel;

/** What lies on the watching page and where: made once, shown and worked by {@link BenchPanel}. */
final class BenchParts {
  final MiddleCards middle = new MiddleCards();
  final ViewRow views;
  final KeyButton more;
  final KeyButton restore;
  final KeyButton homeKey;
  final KeyButton verdictKey;
  final StripsView strips;
  final ControlColumn controls;
  final QuestionCard questions;
  final KeyButton otherPort;
  final TripCanvas trip;
  final LookCard look;
  final OthersCard others;
  final ReplayBar replay;
  final SideBySideCard whatIf;
  final NotesCard notes;
  final JPanel panel = new JPanel(new BorderLayout(0, 6));
  final JPanel sentenceKeys = new JPanel(new LeastFirst(6));

  /** What the parts tell the panel besides its {@link BenchActions}. */
  interface Hands {
    /** The sentence of what is pointed at. */
    void point(String text);

    /** A limit was drawn to another value. */
    void move(LimitMove move);

    /** A question was answered. */
    void answer(String id, boolean yes);
  }

  BenchParts(
      BenchPresenter presenter,
      Palette palette,
      TimeView time,
      BenchActions actions,
      Hands hands,
      BenchSession session) {
    Words words = presenter.words();
    Numbers numbers = presenter.numbers();
    more =
        new KeyButton(words, "more", words.get("control.more", 88), "A", actions::toggleMore)
            .size(126, 36);
    more.colours(palette.control(), palette.ink());
    restore =
        new KeyButton(words, "restore", words.get("control.restore"), "R", actions::restore)
            .size(126, 36);
    restore.colours(palette.control(), palette.ink());
    otherPort =
        new KeyButton(
                words,
                "otherPort",
                words.get("control.otherPort"),
                words.get("control.otherPort.key"),
                actions::otherPort)
            .size(126, 36);
    otherPort.colours(palette.ask(), palette.askInk());
    homeKey =
        new KeyButton(
                words,
                "home",
                words.get("control.home"),
                words.get("control.home.key"),
                actions::home)
            .size(126, 36);
    homeKey.button().setName("row-home");
    homeKey.colours(palette.control(), palette.ink());
    homeKey.button().setVisible(false);
    views = new ViewRow(palette, words, actions);
    strips = new StripsView(palette, words, numbers, time, hands::point, hands::move);
    whatIf = new SideBySideCard(palette, words);
    notes = new NotesCard(palette, words, numbers, session::note);
    controls = new ControlColumn(palette, words, actions);
    questions = new QuestionCard(palette, words, hands::answer);
    trip = new TripCanvas(palette, words, numbers);
    look = new LookCard(palette, words);
    others = new OthersCard(palette, words);
    replay = new ReplayBar(palette, words, numbers, session);
    verdictKey =
        new KeyButton(words, "verdict", words.get("control.verdict"), "V", actions::next)
            .size(150, 34);
    verdictKey.button().setName("row-verdict");
    verdictKey.colours(palette.control(), palette.ink());
    verdictKey.button().setVisible(false);
    replay.add(verdictKey.button());
    sentenceKeys.setOpaque(false);
    sentenceKeys.add(otherPort.button());
    sentenceKeys.add(restore.button());
    sentenceKeys.add(more.button());
    sentenceKeys.add(homeKey.button());
    layOut(palette);
  }

  private void layOut(Palette palette) {
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
    panel.setFocusable(true);
    panel.add(middle.component(), BorderLayout.CENTER);
    panel.add(south, BorderLayout.SOUTH);
  }
}
