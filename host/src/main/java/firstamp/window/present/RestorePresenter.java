package firstamp.window.present;

import firstamp.bench.Snapshot;
import firstamp.pipeline.RunRefused;
import firstamp.window.present.BenchView.Sentence;
import firstamp.window.widgets.Tone;
import firstamp.window.words.Words;

/** Words for switching on again, in this power-up or after one that the probe box remembers. */
final class RestorePresenter {
  private final Words words;

  RestorePresenter(Words words) {
    this.words = words;
  }

  /** What the probe box remembers and was met with at the start; null = nothing. */
  static RunRefused.Latched met(Snapshot now) {
    return now.phase() == Snapshot.Phase.ENDED ? now.beside().latched() : null;
  }

  /** Number to be given back to the probe box; null = there is nothing to switch on again after. */
  static Integer number(Snapshot now) {
    if (now.kind() == Snapshot.Kind.REPLAY) {
      return null;
    }
    if (met(now) != null) {
      return met(now).number();
    }
    return now.findings().trip() != null && SentencePresenter.hasTripped(now)
        ? now.findings().trip().number()
        : null;
  }

  Sentence sentence(RunRefused.Latched latched, String mains) {
    return new Sentence(
        Tone.CAUTION,
        words.get("latched.headline"),
        (words.get("latched.action", remembered(latched)) + " " + mains).trim());
  }

  private String remembered(RunRefused.Latched latched) {
    String number = String.valueOf(latched.number());
    return latched.cause() == null
        ? words.get("latched.number", number)
        : words.get("latched.cause", number, words.get("trip." + latched.cause().id()));
  }
}
