package firstamp.window.strips;

import firstamp.bench.Snapshot;
import firstamp.model.Alarm;
import firstamp.model.Happening;
import firstamp.window.present.AlarmSentences;
import firstamp.window.present.BenchView.EventMark;
import firstamp.window.present.SentencePresenter;
import firstamp.window.widgets.Tone;
import firstamp.window.words.Words;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Gathers what stands in the lane above the strips: switching, alarms, marks, what was done. */
final class EventLane {
  private final Words words;

  EventLane(Words words) {
    this.words = words;
  }

  private String eventName(Alarm alarm) {
    String cause = words.getOr("rule." + alarm.rule(), alarm.rule());
    boolean named = alarm.railName() != null && !alarm.railName().isBlank();
    return named ? words.get("rule.onRail", alarm.railName(), cause) : cause;
  }

  /** What was done to the set, in a few words; null = it is shown elsewhere (steps, the search). */
  private String happened(Happening what) {
    if (what instanceof Happening.Recording || what instanceof Happening.ModeSet) {
      String id = what instanceof Happening.ModeSet set ? "mode." + set.mode().id() : what.kind();
      return words.get("event." + id);
    }
    if (what instanceof Happening.SetChanged || what instanceof Happening.LoadStarted) {
      String text = what.words();
      return text.isBlank()
          ? words.get("event." + what.kind())
          : words.get("event." + what.kind() + ".said", text);
    }
    return null;
  }

  /** All events up to now, in the order of time. */
  List<EventMark> events(Snapshot now) {
    List<EventMark> events = new ArrayList<>();
    if (now.times().closedMs() != null) {
      double closed = now.times().closedMs();
      events.add(new EventMark(closed, words.get("event.on"), Tone.PLAIN));
      double opened = openedMs(now);
      if (Double.isFinite(opened)) {
        boolean tripped = SentencePresenter.hasTripped(now) && now.findings().trip() != null;
        events.add(
            new EventMark(
                opened,
                words.get(tripped ? "event.trip" : "event.off"),
                tripped ? Tone.ALARM : Tone.PLAIN));
      }
      for (Alarm alarm : now.findings().alarms()) {
        if (alarm.foldedUnder() == 0 && alarm.atMs() < opened - closed) {
          events.add(
              new EventMark(
                  closed + alarm.sinceMs(),
                  eventName(alarm),
                  AlarmSentences.toneOf(alarm.priority())));
        }
      }
    }
    int number = 0;
    for (Snapshot.Mark mark : now.marks()) {
      number++;
      String text =
          mark.text() == null || mark.text().isBlank()
              ? words.get("event.here", number)
              : mark.text();
      events.add(new EventMark(mark.ms(), text, Tone.PLAIN));
    }
    for (Snapshot.Said said : now.beside().said()) {
      String text = happened(said.what());
      if (text != null) {
        events.add(new EventMark(said.ms(), text, Tone.PLAIN));
      }
    }
    events.sort(Comparator.comparingDouble(EventMark::ms));
    return events;
  }

  /** Course time at which the switch opened, infinite while it is closed. */
  static double openedMs(Snapshot now) {
    return now.phase() == Snapshot.Phase.ON
            || now.times().closedMs() == null
            || now.times().elapsedMs() == null
        ? Double.POSITIVE_INFINITY
        : now.times().closedMs() + now.times().elapsedMs();
  }
}
