package firstamp.window;

import firstamp.app.ReadySheet;
import firstamp.bench.Snapshot;
import firstamp.emulate.Scenarios;
import firstamp.model.Alarm;
import firstamp.model.JobSheet;
import firstamp.run.questions.OpenQuestion;
import firstamp.sheet.SheetException;
import java.util.ArrayList;
import java.util.List;

/** Scenes of {@link FakeSession} with one thing changed. */
public final class Scenes {
  private Scenes() {}

  public static Snapshot withSupply(String kind, String sits, FakeSession.Scene scene) {
    Snapshot s = new FakeSession(scene).snapshot();
    JobSheet sheet = s.sheet();
    JobSheet.Supply was = sheet.supply();
    JobSheet.Supply supply =
        new JobSheet.Supply(
            kind, sits, was.nominalV(), was.minV(), was.maxV(), was.limitA(), was.fuseA(), true);
    JobSheet other =
        new JobSheet(
            1, sheet.set(), supply, sheet.limits(), sheet.rails(), sheet.levels(), sheet.rules());
    return with(s, other, s.figures().rails());
  }

  public static Snapshot withRail(
      int input, double volts, double lowV, double highV, FakeSession.Scene scene) {
    Snapshot s = new FakeSession(scene).snapshot();
    List<Snapshot.Rail> rails = new ArrayList<>();
    for (Snapshot.Rail rail : s.figures().rails()) {
      rails.add(
          rail.input() == input
              ? new Snapshot.Rail(input, rail.name(), volts, lowV, highV, true)
              : rail);
    }
    return with(s, s.sheet(), rails);
  }

  /** The same set with a signal path and a wire of unknown place on its sheet. */
  static Snapshot withThinking(Snapshot s) {
    JobSheet was = s.sheet();
    JobSheet path = thinking("silent-head");
    JobSheet wires = thinking("lead-off");
    JobSheet sheet =
        new JobSheet(
            1,
            was.set(),
            was.supply(),
            was.limits(),
            was.rails(),
            was.levels(),
            was.rules(),
            path.path(),
            wires.unknownWires(),
            List.of());
    return with(s, sheet, s.figures().rails());
  }

  private static JobSheet thinking(String scenario) {
    try {
      return ReadySheet.of(scenario, Scenarios.sheetJson(scenario)).effective();
    } catch (SheetException defect) {
      throw new IllegalStateException(scenario, defect);
    }
  }

  static Snapshot withLongText(Snapshot s) {
    String text = "Look at each joint between the clip and the chassis, one after the other. ";
    List<Alarm> alarms = new ArrayList<>();
    for (Alarm alarm : s.findings().alarms()) {
      alarms.add(
          new Alarm(
              alarm.number(),
              alarm.rule(),
              alarm.rail(),
              alarm.railName(),
              alarm.atMs(),
              alarm.sinceMs(),
              alarm.changedMs(),
              alarm.priority(),
              alarm.state(),
              alarm.value(),
              alarm.atMost(),
              alarm.limit(),
              alarm.unit(),
              text.repeat(5),
              alarm.foldedUnder()));
    }
    return with(s, s.sheet(), s.figures().rails(), alarms);
  }

  static Snapshot withQuestion(Snapshot s, OpenQuestion question) {
    return with(s, s.sheet(), s.figures().rails(), s.findings().alarms(), List.of(question));
  }

  private static Snapshot with(Snapshot s, JobSheet sheet, List<Snapshot.Rail> rails) {
    return with(s, sheet, rails, s.findings().alarms());
  }

  private static Snapshot with(
      Snapshot s, JobSheet sheet, List<Snapshot.Rail> rails, List<Alarm> alarms) {
    return with(s, sheet, rails, alarms, s.questions());
  }

  private static Snapshot with(
      Snapshot s,
      JobSheet sheet,
      List<Snapshot.Rail> rails,
      List<Alarm> alarms,
      List<OpenQuestion> questions) {
    return new Snapshot(
        s.phase(),
        s.kind(),
        s.powerUp(),
        s.label(),
        sheet,
        s.notice(),
        s.countdownS(),
        new Snapshot.Times(s.times().nowMs(), s.times().closedMs(), s.times().elapsedMs()),
        new Snapshot.Figures(
            s.figures().supplyA(),
            s.figures().supplyV(),
            rails,
            new Snapshot.Levels(
                s.figures().levels().headDbv(),
                s.figures().levels().headUa(),
                s.figures().levels().meterDbv())),
        s.limits(),
        new Snapshot.Findings(
            alarms,
            s.findings().look(),
            s.findings().trip(),
            s.findings().notWatched(),
            s.findings().summary()),
        s.link(),
        s.log(),
        s.marks(),
        questions,
        s.course(),
        s.replay(),
        Snapshot.Beside.NOTHING);
  }
}
