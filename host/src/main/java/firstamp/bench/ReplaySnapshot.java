package firstamp.bench;

import firstamp.log.PowerUpEntry;
import firstamp.model.Alarm;
import firstamp.model.JobSheet;
import firstamp.model.NotWatched;
import firstamp.model.Summary;
import firstamp.model.text.Worded;
import firstamp.trend.Course;
import firstamp.trend.LoggedCourse;
import java.util.List;

/** Puts together what there was to see at a moment of a logged power-up. */
final class ReplaySnapshot {
  private static final Snapshot.Link NO_LINK =
      new Snapshot.Link(Snapshot.LinkState.NONE, null, null, 0, false);

  private ReplaySnapshot() {}

  /** Before it can be looked at, or when it cannot be read. */
  static Snapshot waiting(PowerUpEntry entry, JobSheet sheet, String logFile, Worded failure) {
    return new Snapshot(
        failure == null ? Snapshot.Phase.CONNECTING : Snapshot.Phase.ENDED,
        Snapshot.Kind.REPLAY,
        (int) entry.number(),
        entry.label(),
        sheet,
        failure == null ? Worded.of("firstamp.run.modes", "reading") : failure,
        null,
        new Snapshot.Times(0, null, null),
        new Snapshot.Figures(null, null, List.of(), new Snapshot.Levels(null, null, null)),
        SnapshotParts.limits(sheet),
        new Snapshot.Findings(List.of(), null, null, List.of(), null),
        NO_LINK,
        new Snapshot.Log(true, logFile, null),
        List.of(),
        List.of(),
        new Course(),
        null,
        Snapshot.Beside.NOTHING);
  }

  static Snapshot at(
      double ms,
      PowerUpEntry entry,
      ReplayTrack track,
      LoggedCourse course,
      String logFile,
      Snapshot.Replay replay,
      Summary summary,
      double figureMs) {
    JobSheet sheet = track.sheetAt(ms);
    Snapshot.Phase phase = track.phaseAt(ms);
    Double closed = track.closedBy(ms);
    Double opened = track.openedBy(ms);
    Double elapsed = closed == null ? null : (Double) ((opened == null ? ms : opened) - closed);
    boolean on = closed != null && opened == null;
    boolean levels = sheet.levels() != null && on;
    Double head = levels ? course.meanBefore(Course.Quantity.HEAD_DBV, ms, figureMs) : null;
    Double meter = levels ? course.meanBefore(Course.Quantity.METER_DBV, ms, figureMs) : null;
    Double[] volts = new Double[3];
    for (int rail = 1; rail <= volts.length; rail++) {
      volts[rail - 1] = course.meanBefore(Course.Quantity.ofRail(rail), ms, figureMs);
    }
    List<Alarm> alarms = track.alarmsAt(ms);
    List<NotWatched> gaps =
        summary == null || summary.notWatched() == null ? List.of() : summary.notWatched();
    return new Snapshot(
        phase,
        Snapshot.Kind.REPLAY,
        (int) entry.number(),
        entry.label(),
        sheet,
        null,
        null,
        new Snapshot.Times(ms, closed, elapsed),
        new Snapshot.Figures(
            course.meanBefore(Course.Quantity.SUPPLY_A, ms, figureMs),
            course.meanBefore(Course.Quantity.SUPPLY_V, ms, figureMs),
            SnapshotParts.rails(sheet, volts, on ? elapsed : null),
            new Snapshot.Levels(head, head == null ? null : headUa(sheet, head), meter)),
        SnapshotParts.limits(sheet),
        new Snapshot.Findings(
            alarms,
            track.lookAt(ms, summary == null ? null : summary.look()),
            track.tripBy(ms),
            gaps,
            phase == Snapshot.Phase.ENDED ? summary : null),
        NO_LINK,
        new Snapshot.Log(true, logFile, null),
        track.marksUntil(ms),
        List.of(),
        course,
        replay,
        Snapshot.Beside.NOTHING);
  }

  private static Double headUa(JobSheet sheet, double headDbv) {
    Double ohm = sheet.levels().headOhm();
    return ohm == null ? null : (Double) (Math.pow(10, headDbv / 20) / ohm * 1e6);
  }
}
