package firstamp.window.present;

import firstamp.bench.Snapshot;
import firstamp.model.text.Worded;
import firstamp.window.present.BenchView.Controls;
import firstamp.window.present.BenchView.Sentence;
import firstamp.window.widgets.Tone;
import firstamp.window.words.Numbers;
import firstamp.window.words.Words;
import java.util.Locale;

/** Turns a snapshot into what the window says. Without state: the same snapshot, the same words. */
public final class BenchPresenter {
  private final Words words;
  private final Numbers numbers;
  private final SentencePresenter sentences;
  private final FigurePresenter figures;
  private final StatusPresenter status;
  private final QuestionPresenter questions;
  private final ReplayPresenter replays;
  private final TripPresenter trips;

  public BenchPresenter(Locale locale) {
    words = new Words(locale);
    numbers = new Numbers(locale);
    sentences = new SentencePresenter(words, numbers);
    figures = new FigurePresenter(words, numbers);
    status = new StatusPresenter(words);
    questions = new QuestionPresenter(words);
    replays = new ReplayPresenter(words, numbers);
    trips = new TripPresenter(words, numbers);
  }

  public Words words() {
    return words;
  }

  public Numbers numbers() {
    return numbers;
  }

  /**
   * What the window says now.
   *
   * @param awake why the computer may go to sleep, null = nothing to say
   */
  public BenchView view(Snapshot now, Worded awake) {
    Sentence sentence = sentences.sentence(now);
    return new BenchView(
        title(now, sentence),
        now.sheet().set() == null ? "" : now.sheet().set().name(),
        status.about(now),
        status.phase(now),
        now.times().elapsedMs() == null ? "" : numbers.clock(now.times().elapsedMs()),
        sentence,
        sentences.alarms().folded(now),
        figures.figures(now),
        status.links(now, awake),
        questions.questions(now),
        controls(now),
        replays.replay(now),
        trips.trip(now),
        String.join("\n", questions.concerning(now.sheet())));
  }

  /** A trip or a high alarm stands first in the title, so that the task bar shows it too. */
  private String title(Snapshot now, Sentence sentence) {
    String set = now.sheet().set() == null ? "" : now.sheet().set().name();
    if (sentence.tone() == Tone.ALARM) {
      return words.get("title.alarm", sentence.headline(), set);
    }
    return words.get("title", set, status.phase(now));
  }

  private Controls controls(Snapshot now) {
    boolean live = now.kind() != Snapshot.Kind.REPLAY;
    boolean off = live && LiveSet.Stand.closable(now.phase());
    return new Controls(
        off,
        words.get(off ? "off.ready" : live ? opened(now) : "off.replay"),
        canMark(now),
        canMark(now) && AlarmSentences.unseen(now),
        RestorePresenter.number(now));
  }

  private static String opened(Snapshot now) {
    return StatusPresenter.unproven(now) ? "phase.unproven" : "off.isOff";
  }

  /** Also once it is over: marks and seen are then added behind the end. */
  private static boolean canMark(Snapshot now) {
    return now.phase() != Snapshot.Phase.CONNECTING && now.powerUp() != null;
  }
}
