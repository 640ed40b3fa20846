package firstamp.window.present;

import firstamp.bench.Snapshot;
import firstamp.run.BenchMode;
import firstamp.run.Soak;
import firstamp.window.present.BenchView.LinkView;
import firstamp.window.present.BenchView.QuestionView;
import firstamp.window.widgets.Tone;
import firstamp.window.words.Numbers;
import firstamp.window.words.Spoken;
import firstamp.window.words.Words;
import java.util.List;

/** Words for hands in and soak. */
public final class ModePresenter {
  private final Words words;
  private final Numbers numbers;
  private final Spoken spoken;

  public ModePresenter(Words words, Numbers numbers) {
    this.words = words;
    this.numbers = numbers;
    this.spoken = new Spoken(words.locale());
  }

  /** Whether the mode can be changed now. */
  public static boolean offered(Snapshot now) {
    return now.phase() == Snapshot.Phase.ON && now.kind() != Snapshot.Kind.REPLAY;
  }

  /** The state beside those of cable and log; null in the usual mode. */
  public LinkView state(Snapshot now, BenchMode.State mode) {
    if (!offered(now)) {
      return null;
    }
    String said = mode.words() == null ? null : spoken.say(mode.words());
    return switch (mode.mode()) {
      case USUAL ->
          mode.limitA() == null
              ? null
              : new LinkView(
                  words.get("mode.drawnIn", numbers.amps(mode.limitA())), said, Tone.PLAIN);
      case HANDS_IN ->
          new LinkView(
              mode.limitA() == null
                  ? words.get("mode.handsIn")
                  : words.get("mode.handsIn.limit", numbers.amps(mode.limitA())),
              said,
              Tone.CAUTION);
      case SOAK ->
          new LinkView(
              mode.leftMs() == null
                  ? words.get("mode.soak")
                  : words.get("mode.soak.left", numbers.clock(mode.leftMs())),
              said,
              Tone.CAUTION);
    };
  }

  /** The question before nobody watches. */
  public QuestionView question() {
    return question(
        words,
        OwnQuestions.Kind.SOAK.id(),
        words.get("mode.soak.hours", String.valueOf(Soak.USUAL_HOURS)));
  }

  /** The same under another identifier: it is asked before switching on. */
  public static QuestionView question(Words words, String id) {
    return question(words, id, words.get("mode.soak.title"));
  }

  private static QuestionView question(Words words, String id, String title) {
    return new QuestionView(
        id,
        title,
        List.of(words.get("mode.soak.1"), words.get("mode.soak.2"), words.get("mode.soak.3")),
        true,
        words.get("mode.soak.yes"),
        words.get("mode.soak.no"));
  }
}
