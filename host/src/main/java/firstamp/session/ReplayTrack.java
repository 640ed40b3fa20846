package firstamp.session;

import firstamp.model.Alarm;
import firstamp.model.JobSheet;
import firstamp.model.OffCause;
import firstamp.model.Reading;
import firstamp.model.Summary;
import java.util.ArrayList;
import java.util.List;

/**
 * What a replay found, by course time, so that any moment of it can be shown.
 *
 * <p>Filled by one thread, then only read.
 */
final class ReplayTrack extends ForwardingChainListener {
  private final SnapshotBuilder builder;
  private final List<Entry<Alarm>> alarms = new ArrayList<>();
  private final List<Snapshot.ReplayEvent> events = new ArrayList<>();
  private final List<Snapshot.Mark> marks = new ArrayList<>();
  private Chain chain;
  private double lookMs = Double.NaN;
  private Summary.LookFigures look;
  private double closedMs = Double.NaN;
  private double openedMs = Double.NaN;
  private double trippedMs = Double.NaN;

  /** Something at a course time. */
  record Entry<T>(double ms, T what) {}

  ReplayTrack(JobSheet effective) {
    this(new SnapshotBuilder(effective));
  }

  private ReplayTrack(SnapshotBuilder builder) {
    super(builder);
    this.builder = builder;
  }

  /** The chain that is being fed. */
  void follow(Chain fed) {
    chain = fed;
  }

  private double now() {
    return builder.course().endMs();
  }

  private double course(double sinceClosingMs) {
    return Double.isNaN(closedMs) ? now() : closedMs + sinceClosingMs;
  }

  @Override
  public void reading(Reading reading, double atMs) {
    builder.add(reading, chain.scaling());
  }

  @Override
  public void look(Summary.LookFigures figures) {
    lookMs = now();
    look = figures;
    super.look(figures);
  }

  @Override
  public void on() {
    closedMs = builder.courseMs(chain.closedMicros());
    openedMs = Double.NaN;
    events.add(new Snapshot.ReplayEvent(closedMs, Snapshot.EventKind.ON, ""));
  }

  @Override
  public void off(OffCause by, double atMs) {
    if (!Double.isNaN(closedMs) && by != OffCause.TRIP) {
      openedMs = course(atMs);
      events.add(new Snapshot.ReplayEvent(openedMs, Snapshot.EventKind.OFF, ""));
    }
    super.off(by, atMs);
  }

  @Override
  public void trip(TripFigures figures) {
    trippedMs = figures.atMs() == null ? now() : course(figures.atMs());
    openedMs = trippedMs;
    events.add(new Snapshot.ReplayEvent(trippedMs, Snapshot.EventKind.TRIP, figures.cause()));
  }

  @Override
  public void alarm(Alarm alarm) {
    boolean first = alarms.stream().noneMatch(entry -> entry.what().number() == alarm.number());
    double ms = Double.isNaN(closedMs) ? now() : closedMs + alarm.changedMs();
    alarms.add(new Entry<>(ms, alarm));
    if (first) {
      events.add(new Snapshot.ReplayEvent(ms, Snapshot.EventKind.ALARM, alarm.text()));
    }
    super.alarm(alarm);
  }

  @Override
  public void mark(String text, double atMs) {
    double ms = course(atMs);
    marks.add(new Snapshot.Mark(ms, text));
    events.add(new Snapshot.ReplayEvent(ms, Snapshot.EventKind.MARK, text));
    super.mark(text, atMs);
  }

  SnapshotBuilder builder() {
    return builder;
  }

  Chain chain() {
    return chain;
  }

  List<Snapshot.ReplayEvent> events() {
    return List.copyOf(events);
  }

  Course course() {
    return builder.course();
  }

  /** Alarms as they stood at a moment, in the order of their raising. */
  List<Alarm> alarmsAt(double ms) {
    List<Alarm> standing = new ArrayList<>();
    for (Entry<Alarm> entry : alarms) {
      if (entry.ms() > ms) {
        continue;
      }
      standing.removeIf(alarm -> alarm.number() == entry.what().number());
      standing.add(entry.what());
    }
    standing.sort((a, b) -> Integer.compare(a.number(), b.number()));
    return standing;
  }

  List<Snapshot.Mark> marksUntil(double ms) {
    return marks.stream().filter(mark -> mark.ms() <= ms).toList();
  }

  Summary.LookFigures lookAt(double ms) {
    return lookMs <= ms ? look : null;
  }

  /** When the switch closed, if it had by then. */
  Double closedBy(double ms) {
    return closedMs <= ms ? (Double) closedMs : null;
  }

  /** When it opened, if it had by then. */
  Double openedBy(double ms) {
    return openedMs <= ms ? (Double) openedMs : null;
  }

  boolean trippedBy(double ms) {
    return trippedMs <= ms;
  }

  /** Phase at a moment. */
  Snapshot.Phase phaseAt(double ms) {
    if (ms >= course().endMs()) {
      return Snapshot.Phase.ENDED;
    }
    if (trippedBy(ms)) {
      return Snapshot.Phase.TRIPPED;
    }
    if (openedBy(ms) != null) {
      return Snapshot.Phase.RAILS_FALLING;
    }
    if (closedBy(ms) != null) {
      return Snapshot.Phase.ON;
    }
    return Snapshot.Phase.OPEN;
  }
}
