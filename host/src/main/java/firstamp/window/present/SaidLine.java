package firstamp.window.present;

import firstamp.bench.Snapshot;
import firstamp.model.text.Worded;
import firstamp.run.BenchMode;
import firstamp.window.words.Spoken;
import firstamp.window.words.Words;

/** The line below the strips while nothing is pointed at: what became of a wish, else what fits. */
public final class SaidLine {
  /** So long a line says what became of a moved limit or of a mode. */
  private static final double SAID_MS = 10_000;

  private final Words words;
  private final LimitPresenter limits;
  private final Spoken spoken;
  private Snapshot.Moved moved;
  private double movedMs;
  private Worded modeWords;
  private double modeSaidMs;
  private String leaving;

  public SaidLine(Words words, LimitPresenter limits) {
    this.words = words;
    this.limits = limits;
    this.spoken = new Spoken(words.locale());
  }

  /** What is said from now on until the page is left. */
  public void leaving(String words) {
    leaving = words;
  }

  public void follow(Snapshot now, BenchMode.State mode) {
    if (mode.words() != null && !mode.words().equals(modeWords)) {
      modeSaidMs = now.times().nowMs();
    }
    modeWords = mode.words();
    if (now.beside().moved() != moved) {
      moved = now.beside().moved();
      movedMs = now.times().nowMs();
    }
  }

  /**
   * What to say now.
   *
   * @param strips whether there are strips to point at
   */
  public String line(Snapshot now, BenchView view, boolean strips) {
    if (leaving != null && now.phase() == Snapshot.Phase.RAILS_FALLING
        || leaving != null && now.phase() == Snapshot.Phase.TRIPPED) {
      return leaving;
    }
    if (modeWords != null && now.times().nowMs() - modeSaidMs < SAID_MS) {
      return spoken.say(modeWords);
    }
    if (moved != null && now.times().nowMs() - movedMs < SAID_MS) {
      return limits.became(now, moved);
    }
    return view.replay() != null || view.controls().off() && view.questions().isEmpty()
        ? strips ? words.get("pointer.none") : ""
        : view.closing();
  }
}
