package firstamp.bench;

import firstamp.model.Alarm;
import firstamp.model.JobSheet;
import firstamp.model.Look;
import firstamp.model.ProbeEvent;
import firstamp.model.ProbeHello;
import firstamp.model.Summary;
import firstamp.model.SwitchState;
import firstamp.model.Trip;
import firstamp.model.samples.Capture;
import firstamp.model.samples.Scaling;
import firstamp.pipeline.TripFigures;
import firstamp.trend.LoggedCourse;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * What happened in a logged power-up, by course time, so that any moment of it can be shown: made
 * of its events and its alarms alone, without reading the stream.
 *
 * <p>Immutable but for the alarms, which the rules may find again.
 */
final class ReplayTrack {
  private final JobSheet sheet;
  private final Scaling scaling;
  private final ProbeHello hello;
  private final LoggedCourse course;
  private final double endMs;
  private final List<ProbeEvent> events;
  private final List<Snapshot.Mark> marks = new ArrayList<>();
  private final List<Snapshot.Said> said = new ArrayList<>();
  private final boolean seenLater;
  private volatile List<Alarm> transitions;

  /**
   * A track.
   *
   * @param sheet effective
   * @param course of the power-up
   * @param events all of them, in their order
   * @param transitions of its alarms, in their order
   */
  ReplayTrack(
      JobSheet sheet, LoggedCourse course, List<ProbeEvent> events, List<Alarm> transitions) {
    this.sheet = sheet;
    this.scaling = course.scaling();
    this.hello = course.header().hello();
    this.course = course;
    this.events = List.copyOf(events);
    this.transitions = List.copyOf(transitions);
    this.endMs = course.endMs();
    boolean over = false;
    boolean seen = false;
    for (ProbeEvent event : events) {
      over |= event instanceof ProbeEvent.RunEnded;
      seen |= over && event instanceof ProbeEvent.Acknowledged;
      mark(event);
    }
    seenLater = seen;
  }

  private void mark(ProbeEvent event) {
    if (event instanceof ProbeEvent.Marked marked) {
      marks.add(new Snapshot.Mark(courseMs(marked.micros()), marked.text()));
    } else if (event instanceof ProbeEvent.Happened happened) {
      said.add(new Snapshot.Said(courseMs(happened.micros()), happened.what()));
    } else if (event instanceof ProbeEvent.Noted noted
        && noted.mark() >= 1
        && noted.mark() <= marks.size()) {
      marks.set(
          noted.mark() - 1, new Snapshot.Mark(marks.get(noted.mark() - 1).ms(), noted.text()));
    }
  }

  /** Course time of a probe time. */
  double courseMs(long micros) {
    return course.courseMs(micros);
  }

  /** Probe time of a course time. */
  long micros(double ms) {
    return Math.round((ms - courseMs(0)) * 1000);
  }

  /** Replaces the stored alarms by those that the rules have found. */
  void found(List<Alarm> all) {
    transitions = List.copyOf(all);
  }

  /** Number of alarm transitions. */
  List<Alarm> transitions() {
    return transitions;
  }

  /** When the switch closed for the last time by then; null = it had not. */
  Double closedBy(double ms) {
    Double closed = null;
    for (ProbeEvent event : events) {
      if (event instanceof ProbeEvent.SwitchChanged changed
          && changed.state() == SwitchState.ON
          && courseMs(changed.micros()) <= ms) {
        closed = courseMs(changed.micros());
      }
    }
    return closed;
  }

  /** When it opened after that; null = it had not. */
  Double openedBy(double ms) {
    Double opened = null;
    boolean on = false;
    for (ProbeEvent event : events) {
      if (event instanceof ProbeEvent.SwitchChanged changed && courseMs(changed.micros()) <= ms) {
        boolean now = changed.state() == SwitchState.ON;
        opened = now ? null : on ? (Double) courseMs(changed.micros()) : opened;
        on = now;
      } else if (on && event instanceof ProbeEvent.Tripped tripped) {
        double at = courseMs(tripped.trip().openedMicros());
        opened = at <= ms ? (Double) at : opened;
        on = at > ms;
      }
    }
    return opened;
  }

  private Trip trippedBy(double ms) {
    Trip trip = null;
    for (ProbeEvent event : events) {
      if (event instanceof ProbeEvent.Tripped tripped
          && courseMs(tripped.trip().openedMicros()) <= ms) {
        trip = tripped.trip();
      }
    }
    return trip;
  }

  /** The trip that had happened by then, with its capture; null = none. */
  Snapshot.TripView tripBy(double ms) {
    Trip trip = trippedBy(ms);
    if (trip == null) {
      return null;
    }
    Capture capture = null;
    for (ProbeEvent event : events) {
      if (event instanceof ProbeEvent.Captured captured) {
        capture = captured.capture();
      }
    }
    return SnapshotParts.trip(trip, figures(trip), capture, scaling, sheetAt(ms));
  }

  private TripFigures figures(Trip trip) {
    Double closed = closedBy(courseMs(trip.openedMicros()));
    return TripFigures.of(
        trip, scaling, closed == null ? null : (Long) micros(closed), hello.hardShortA());
  }

  /** The phase at a moment. */
  Snapshot.Phase phaseAt(double ms) {
    if (ms >= endMs) {
      return Snapshot.Phase.ENDED;
    }
    if (closedBy(ms) != null) {
      if (openedBy(ms) == null) {
        return Snapshot.Phase.ON;
      }
      Trip trip = trippedBy(ms);
      return trip != null && courseMs(trip.openedMicros()) >= closedBy(ms)
          ? Snapshot.Phase.TRIPPED
          : Snapshot.Phase.RAILS_FALLING;
    }
    for (ProbeEvent event : events) {
      if (event instanceof ProbeEvent.Looked looked) {
        double begin = courseMs(looked.look().startMicros());
        double end = courseMs(looked.look().endMicros());
        if (ms >= begin && ms < end) {
          return checks(looked.look()) ? Snapshot.Phase.CHECK : Snapshot.Phase.LOOK;
        }
        if (ms >= end && !looked.look().closes()) {
          return Snapshot.Phase.RAILS_FALLING;
        }
      }
    }
    return Snapshot.Phase.OPEN;
  }

  /** A look that was ended by the check before it has joined nothing. */
  private static boolean checks(Look look) {
    return look.result().doubtsTheProbe();
  }

  /** The sheet with the limits that were in force. */
  JobSheet sheetAt(double ms) {
    JobSheet now = sheet;
    for (ProbeEvent event : events) {
      if (event instanceof ProbeEvent.LimitChanged changed && courseMs(changed.micros()) <= ms) {
        now = changed.limit().on(now, changed.rail(), changed.value());
      }
    }
    return now;
  }

  /** Alarms as they stood at a moment, in the order of their raising. */
  List<Alarm> alarmsAt(double ms) {
    List<Alarm> standing = new ArrayList<>();
    for (Alarm alarm : transitions) {
      if (atMs(alarm) <= ms) {
        standing.removeIf(other -> other.number() == alarm.number());
        standing.add(alarm);
      }
    }
    standing.sort(Comparator.comparingInt(Alarm::number));
    if (seenLater && ms >= endMs) {
      standing.replaceAll(SnapshotBuilder::seen);
    }
    return standing;
  }

  /** Alarm times count from the closing; where it was never closed from the start of the look. */
  private double atMs(Alarm alarm) {
    return zeroMs() + alarm.changedMs();
  }

  private double zeroMs() {
    for (ProbeEvent event : events) {
      if (event instanceof ProbeEvent.SwitchChanged changed && changed.state() == SwitchState.ON) {
        return courseMs(changed.micros());
      }
    }
    for (ProbeEvent event : events) {
      if (event instanceof ProbeEvent.Looked looked) {
        return courseMs(looked.look().startMicros());
      }
    }
    return 0;
  }

  /** Course time of an alarm's raising. */
  double raisedMs(Alarm alarm) {
    return zeroMs() + alarm.atMs();
  }

  List<Snapshot.Mark> marksUntil(double ms) {
    return marks.stream().filter(mark -> mark.ms() <= ms).toList();
  }

  List<Snapshot.Said> saidUntil(double ms) {
    return said.stream().filter(one -> one.ms() <= ms).toList();
  }

  /** What the look had found by then; null = it was not over. */
  Summary.LookFigures lookAt(double ms, Summary.LookFigures figures) {
    for (ProbeEvent event : events) {
      if (event instanceof ProbeEvent.Looked looked && courseMs(looked.look().endMicros()) <= ms) {
        return figures != null
            ? figures
            : new Summary.LookFigures(looked.look().result().id(), null, null, null);
      }
    }
    return null;
  }

  /** All that stands on the time bar. */
  List<Snapshot.ReplayEvent> timeBar() {
    return new ReplayTimeBar(this).events(events, marks, transitions);
  }
}
