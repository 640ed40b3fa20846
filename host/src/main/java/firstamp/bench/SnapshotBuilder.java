package firstamp.bench;

import firstamp.model.Alarm;
import firstamp.model.AlarmState;
import firstamp.model.Happening;
import firstamp.model.JobSheet;
import firstamp.model.OffCause;
import firstamp.model.ProbeEvent;
import firstamp.model.Summary;
import firstamp.model.samples.Capture;
import firstamp.model.samples.LevelWindow;
import firstamp.model.samples.Reading;
import firstamp.model.samples.Scaling;
import firstamp.model.text.Worded;
import firstamp.pipeline.Chain;
import firstamp.pipeline.ChainListener;
import firstamp.pipeline.RecentMean;
import firstamp.run.questions.OpenQuestion;
import firstamp.trend.Course;
import firstamp.trend.ReadingColumns;
import java.util.ArrayList;
import java.util.List;

/**
 * Gathers what the window shows from what the chain says; the same for a live run and a replay.
 *
 * <p>Fed on one thread, which also calls {@link #build}; the snapshots go to any thread.
 */
public final class SnapshotBuilder implements ChainListener {
  private static final int FIGURE_READINGS = 10;
  private static final double MICROS_PER_MS = 1000.0;

  private JobSheet sheet;
  private final Course course = new Course();
  private final List<Alarm> alarms = new ArrayList<>();
  private final List<Snapshot.Mark> marks = new ArrayList<>();
  private final List<Snapshot.Said> said = new ArrayList<>();
  private final List<ProbeEvent.Told> told = new ArrayList<>();
  private final ReadingColumns columns = new ReadingColumns();
  private final RecentMean supplyA = new RecentMean(FIGURE_READINGS);
  private final RecentMean supplyV = new RecentMean(FIGURE_READINGS);
  private final RecentMean[] rails = {
    new RecentMean(FIGURE_READINGS),
    new RecentMean(FIGURE_READINGS),
    new RecentMean(FIGURE_READINGS)
  };
  private long originMicros = -1;
  private LevelWindow levels;
  private Summary.LookFigures look;
  private boolean lost;
  private boolean restarted;
  private String linkText;
  private boolean logging = true;
  private String logText;

  public SnapshotBuilder(JobSheet effective) {
    this.sheet = effective;
  }

  /** Adds a reading to the course. */
  public void add(Reading reading, Scaling scaling) {
    if (originMicros < 0) {
      originMicros = reading.startMicros();
    }
    columns.of(reading, scaling);
    figure(supplyA, Course.Quantity.SUPPLY_A);
    figure(supplyV, Course.Quantity.SUPPLY_V);
    for (int rail = 1; rail <= 3; rail++) {
      figure(rails[rail - 1], Course.Quantity.ofRail(rail));
    }
    course.append(
        (reading.startMicros() - originMicros) / 1000, columns.low, columns.high, columns.mean);
  }

  private void figure(RecentMean recent, Course.Quantity quantity) {
    float value = columns.mean[quantity.ordinal()];
    if (Float.isNaN(value)) {
      recent.clear();
    } else {
      recent.add(value);
    }
  }

  /** Course time of a probe time. */
  double courseMs(long micros) {
    return originMicros < 0 ? 0 : (micros - originMicros) / MICROS_PER_MS;
  }

  public Course course() {
    return course;
  }

  @Override
  public void look(Summary.LookFigures figures) {
    look = figures;
  }

  @Override
  public void alarm(Alarm alarm) {
    for (int k = 0; k < alarms.size(); k++) {
      if (alarms.get(k).number() == alarm.number()) {
        alarms.set(k, alarm);
        return;
      }
    }
    alarms.add(alarm);
  }

  @Override
  public void off(OffCause by, double atMs) {
    levels = null;
  }

  @Override
  public void mark(String text, double atMs) {
    marks.add(new Snapshot.Mark(course.endMs(), text));
  }

  @Override
  public void happened(Happening what, double atMs) {
    said.add(new Snapshot.Said(course.endMs(), what));
  }

  /** What was done to the set so far. */
  List<Snapshot.Said> said() {
    return said;
  }

  @Override
  public void noted(int mark, String text) {
    if (mark >= 1 && mark <= marks.size()) {
      marks.set(mark - 1, new Snapshot.Mark(marks.get(mark - 1).ms(), text));
    }
  }

  @Override
  public void limitChanged(ProbeEvent.LimitChanged event) {
    sheet = event.limit().on(sheet, event.rail(), event.value());
  }

  @Override
  public void seenAfterTheEnd() {
    alarms.replaceAll(SnapshotBuilder::seen);
  }

  /** The alarm once somebody has seen it. */
  static Alarm seen(Alarm alarm) {
    return switch (alarm.state()) {
      case UNACKNOWLEDGED -> alarm.inState(AlarmState.ACKNOWLEDGED, alarm.changedMs());
      case CLEARED_UNACKNOWLEDGED -> alarm.inState(AlarmState.CLEARED, alarm.changedMs());
      case ACKNOWLEDGED, CLEARED -> alarm;
    };
  }

  @Override
  public void told(ProbeEvent.Told event, double atMs) {
    told.add(event);
  }

  /** What the person has told so far. */
  List<ProbeEvent.Told> told() {
    return told;
  }

  /** The sheet with the limits now in force. */
  public JobSheet sheet() {
    return sheet;
  }

  @Override
  public void link(ProbeEvent.LinkState state, String text, double atMs) {
    lost = state == ProbeEvent.LinkState.LOST;
    restarted |= state == ProbeEvent.LinkState.PROBE_RESTARTED;
    linkText = state == ProbeEvent.LinkState.RESTORED ? null : text;
  }

  @Override
  public void log(ProbeEvent.LogChanged event, double atMs) {
    logging = event.logging();
    logText = logging ? null : event.text();
  }

  @Override
  public void levels(LevelWindow window) {
    levels = window;
  }

  /** What the chain does not know. */
  record Outside(
      Snapshot.Phase phase,
      Snapshot.Kind kind,
      Integer powerUp,
      String label,
      Worded notice,
      Integer countdownS,
      Double nowMs,
      String port,
      String logFile,
      long lostConversions,
      boolean reduced,
      Capture capture,
      Snapshot.Limits limits,
      List<OpenQuestion> questions,
      Summary summary,
      Snapshot.Beside beside) {}

  /** The snapshot now. */
  Snapshot build(Chain chain, Outside outside) {
    double now = outside.nowMs() != null ? outside.nowMs() : course.endMs();
    Long closed = chain == null ? null : chain.closedMicros();
    Double elapsed = null;
    if (closed != null) {
      double end = chain.openedMicros() != null ? courseMs(chain.openedMicros()) : now;
      elapsed = Math.max(0, end - courseMs(closed));
    }
    Double headDbv =
        dbv(
            levels == null ? null : levels.headRmsV(),
            levels == null ? 0 : levels.headNoiseFloorV());
    Double meterDbv =
        dbv(
            levels == null ? null : levels.meterRmsV(),
            levels == null ? 0 : levels.meterNoiseFloorV());
    return new Snapshot(
        outside.phase(),
        outside.kind(),
        outside.powerUp(),
        outside.label(),
        sheet,
        outside.notice(),
        outside.countdownS(),
        new Snapshot.Times(
            now,
            closed == null ? null : courseMs(closed),
            elapsed,
            closed == null || chain.openedMicros() == null || chain.openingSeen()),
        new Snapshot.Figures(
            supplyA.mean(),
            supplyV.mean(),
            railsNow(elapsed, chain != null && chain.openedMicros() == null),
            new Snapshot.Levels(headDbv, headUa(), meterDbv)),
        outside.limits(),
        new Snapshot.Findings(
            alarms,
            look,
            chain == null || chain.trip() == null
                ? null
                : SnapshotParts.trip(
                    chain.trip(), chain.tripFigures(), outside.capture(), chain.scaling(), sheet),
            chain == null ? List.of() : chain.rules().notWatched(),
            outside.summary()),
        link(outside),
        new Snapshot.Log(logging, outside.logFile(), logText),
        marks,
        outside.questions(),
        course,
        null,
        outside.beside());
  }

  private Snapshot.Link link(Outside outside) {
    Snapshot.LinkState state = Snapshot.LinkState.GOOD;
    if (outside.phase() == Snapshot.Phase.CONNECTING) {
      state = Snapshot.LinkState.CONNECTING;
    } else if (lost) {
      state = Snapshot.LinkState.LOST;
    } else if (restarted) {
      state = Snapshot.LinkState.PROBE_RESTARTED;
    } else if (outside.kind() != Snapshot.Kind.PROBE) {
      state = Snapshot.LinkState.NONE;
    }
    return new Snapshot.Link(
        state, outside.port(), linkText, outside.lostConversions(), outside.reduced());
  }

  private List<Snapshot.Rail> railsNow(Double elapsedMs, boolean closed) {
    Double[] volts = new Double[rails.length];
    for (int k = 0; k < rails.length; k++) {
      volts[k] = rails[k].mean();
    }
    return SnapshotParts.rails(sheet, volts, closed ? elapsedMs : null);
  }

  private static Double dbv(Double volts, double floor) {
    return volts == null || volts <= floor || volts <= 0 ? null : 20 * Math.log10(volts);
  }

  private Double headUa() {
    Double ohm = sheet.levels() == null ? null : sheet.levels().headOhm();
    return ohm == null || levels == null || levels.headRmsV() <= levels.headNoiseFloorV()
        ? null
        : levels.headRmsV() / ohm * 1e6;
  }
}
