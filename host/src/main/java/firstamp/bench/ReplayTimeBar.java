package firstamp.bench;

import firstamp.model.Alarm;
import firstamp.model.ProbeEvent;
import firstamp.model.SwitchState;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** What stands on the time bar of a replay: switching, trips, marks, alarms. */
final class ReplayTimeBar {
  private final ReplayTrack track;

  ReplayTimeBar(ReplayTrack track) {
    this.track = track;
  }

  /** All that stands on the time bar. */
  List<Snapshot.ReplayEvent> events(
      List<ProbeEvent> events, List<Snapshot.Mark> marks, List<Alarm> transitions) {
    List<Snapshot.ReplayEvent> bar = new ArrayList<>();
    boolean on = false;
    for (ProbeEvent event : events) {
      if (event instanceof ProbeEvent.SwitchChanged changed) {
        boolean now = changed.state() == SwitchState.ON;
        if (now) {
          bar.add(at(changed.micros(), Snapshot.EventKind.ON, ""));
        } else if (on && changed.state() == SwitchState.OFF) {
          bar.add(at(changed.micros(), Snapshot.EventKind.OFF, ""));
        }
        on = now;
      } else if (event instanceof ProbeEvent.Tripped tripped) {
        bar.add(at(tripped.trip().openedMicros(), Snapshot.EventKind.TRIP, ""));
        on = false;
      }
    }
    for (Snapshot.Mark mark : marks) {
      bar.add(new Snapshot.ReplayEvent(mark.ms(), Snapshot.EventKind.MARK, mark.text()));
    }
    List<Integer> known = new ArrayList<>();
    for (Alarm alarm : transitions) {
      if (!known.contains(alarm.number())) {
        known.add(alarm.number());
        bar.add(
            new Snapshot.ReplayEvent(
                track.raisedMs(alarm), Snapshot.EventKind.ALARM, alarm.text(), alarm.priority()));
      }
    }
    bar.sort(Comparator.comparingDouble(Snapshot.ReplayEvent::ms));
    return bar;
  }

  private Snapshot.ReplayEvent at(long micros, Snapshot.EventKind kind, String text) {
    return new Snapshot.ReplayEvent(track.courseMs(micros), kind, text);
  }
}
