package firstamp.window;

import firstamp.session.BenchSession;
import firstamp.session.LimitMove;
import firstamp.window.MiddleCards.Card;
import java.awt.BorderLayout;
import javax.swing.BorderFactory;
import javax.swing.Box;
import javax.swing.BoxLayout;
import javax.swing.JPanel;

/** What lies in the bench window and where: made once, shown and worked by {@link BenchPanel}. */
final class BenchParts {
  final MiddleCards middle = new MiddleCards();
  final ViewRow views;
  final KeyButton more;
  final KeyButton homeKey;
  final KeyButton verdictKey;
  final HeaderBar header;
  final SentenceBar sentence;
  final FigureRow figures;
  final StripsView strips;
  final ControlColumn controls;
  final QuestionCard questions;
  final TripCanvas trip;
  final LookCard look;
  final OthersCard others;
  final ReplayBar replay;
  final SideBySideCard whatIf;
  final NotesCard notes;
  final JPanel panel = new JPanel(new BorderLayout(10, 8));

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
    header = new HeaderBar(palette);
    more =
        new KeyButton(words, "more", words.get("control.more", 88), "A", actions::toggleMore)
            .size(126, 36);
    more.colours(palette.control(), palette.ink());
    homeKey =
        new KeyButton(
                words,
                "home",
                words.get("control.home"),
                words.get("control.home.key"),
                actions::home)
            .size(126, 36);
    homeKey.colours(palette.control(), palette.ink());
    homeKey.button().setVisible(false);
    sentence = new SentenceBar(palette, more.button(), homeKey.button());
    views = new ViewRow(palette, words, actions);
    figures = new FigureRow(palette);
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
}
