package firstamp.window.present;

import firstamp.bench.Snapshot;
import firstamp.window.present.BenchView.EventMark;
import firstamp.window.present.BenchView.ReplayView;
import firstamp.window.widgets.Tone;
import firstamp.window.words.Numbers;
import firstamp.window.words.Words;

/** The time bar of a replay in words and places. */
public final class ReplayPresenter {
  private final Words words;
  private final Numbers numbers;

  ReplayPresenter(Words words, Numbers numbers) {
    this.words = words;
    this.numbers = numbers;
  }

  ReplayView replay(Snapshot now) {
    Snapshot.Replay replay = now.replay();
    if (replay == null) {
      return null;
    }
    double zero = zero(now);
    String position =
        words.get(
            "replay.position",
            numbers.moment(now.times().nowMs() - zero),
            numbers.moment(replay.toMs() - zero));
    return new ReplayView(
        replay.fromMs(),
        replay.toMs(),
        now.times().nowMs(),
        zero,
        replay.held(),
        replay.speed(),
        position,
        replay.events().stream()
            .map(event -> new EventMark(event.ms(), text(event), tone(event)))
            .toList());
  }

  private String text(Snapshot.ReplayEvent event) {
    return event.text() == null || event.text().isBlank()
        ? words.get("event." + event.kind().name().toLowerCase(java.util.Locale.ROOT))
        : event.text();
  }

  /** Course time of the first closing as far as it is known. */
  public static double zero(Snapshot now) {
    if (now.times().closedMs() != null) {
      return now.times().closedMs();
    }
    if (now.replay() != null) {
      for (Snapshot.ReplayEvent event : now.replay().events()) {
        if (event.kind() == Snapshot.EventKind.ON) {
          return event.ms();
        }
      }
    }
    return now.times().nowMs();
  }

  private static Tone tone(Snapshot.ReplayEvent event) {
    return switch (event.kind()) {
      case ALARM ->
          event.priority() == null ? Tone.CAUTION : AlarmSentences.toneOf(event.priority());
      case TRIP -> Tone.ALARM;
      case ON, OFF, MARK -> Tone.PLAIN;
    };
  }

  /** Course time of the next event after a moment, or of the one before it; null = none. */
  public static Double neighbour(ReplayView view, boolean forward) {
    Double found = null;
    for (EventMark event : view.events()) {
      if (forward && event.ms() > view.atMs() + 5) {
        return event.ms();
      }
      if (!forward && event.ms() < view.atMs() - 5) {
        found = event.ms();
      }
    }
    return found;
  }
}
