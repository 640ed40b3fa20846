package firstamp.cli.command;

import firstamp.cli.output.CliFailure;
import firstamp.cli.output.ExitCode;
import firstamp.cli.output.LocateText;
import firstamp.cli.output.Logs;
import firstamp.cli.output.Said;
import firstamp.cli.output.Speech;
import firstamp.cli.run.LiveSetup;
import firstamp.cli.run.Names;
import firstamp.locate.signal.LocateFile;
import firstamp.locate.signal.LocateSession;
import firstamp.locate.signal.Observation;
import firstamp.locate.signal.SignalGraph;
import firstamp.log.BenchLog;
import firstamp.log.LogException;
import firstamp.log.PowerUpEntry;
import firstamp.log.PowerUpReader;
import firstamp.model.JobSheet;
import firstamp.model.text.Explained;
import firstamp.model.text.UnfitValue;
import firstamp.sheet.SheetException;
import firstamp.study.SearchState;
import firstamp.study.SignalSearch;
import java.util.ArrayList;
import java.util.List;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Finds where a signal stops. */
@Command(
    name = "locate",
    description = {
      "Finds where a signal stops: names the next point to measure, and in the end where it is lost.",
      "Move the clip with the set off: switch off, wait until the rails are down, clip on, hands out,"
          + " switch on.",
      "A clip that slips in a live set can short a rail and give a shock; only where it cannot be"
          + " done otherwise: --hands-in of watch, one hand, insulated clip.",
      "--new starts from record-chain, play-chain, receiver or amplifier; --example replays"
          + " silent-head.",
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  firstamp locate head.json --sheet set.json          the path of a job sheet",
      "  firstamp locate head.json --new record-chain        a path to start from; edit the levels",
      "  firstamp locate head.json --at head --gone          the complaint",
      "  firstamp locate head.json --at meter --level -18.4 --plus-minus 0.5",
      "  firstamp locate head.json --power-up last           what the clip found in a logged"
          + " power-up",
      "  firstamp locate head.json --work \"head contact, record\" --levels -42,-11,-5,-30",
      "  firstamp locate head.json --mended \"head contact, record\"",
      "  firstamp locate --example silent-head               a worked example",
      "",
      "Only with the supply rails in order: while one has an alarm, name it with --rail-alarm.",
      "Names are found whatever their capitals. Exit code 3: not yet, a rail alarm is active.",
      "65: the power-up is of another set, or nothing was measured in it.",
      "",
      "Mains and stored charge can kill. The probe stays off circuits above 60 V. Local electrical"
          + " codes and licensed practice come first.",
    })
public final class LocateCommand extends FaultFindingCommand<LocateSession> {
  LocateCommand(Speech speech) {
    super(speech);
  }

  @Option(names = "--at", paramLabel = "POINT", description = "the point that was measured")
  private String at;

  @Option(names = "--level", paramLabel = "DBV", description = "level there, dBV")
  private Double level;

  @Option(
      names = "--plus-minus",
      paramLabel = "DB",
      defaultValue = "1",
      description = "uncertainty of the level, one standard deviation (default 1)")
  private double uncertaintyDb;

  @Option(names = "--at-most", description = "the level is there or below: the meter shows no less")
  private boolean atMost;

  @Option(names = "--there", description = "the signal is there as it should be")
  private boolean there;

  @Option(names = "--gone", description = "the signal is gone or faint")
  private boolean gone;

  @Option(names = "--mode", paramLabel = "NAME", description = "position of the switches")
  private String mode;

  @Option(names = "--driven-at", paramLabel = "POINT", description = "where the tone is fed in")
  private String drivenAt;

  @Option(names = "--work", paramLabel = "JOINT", description = "a contact worked several times")
  private String worked;

  @Option(names = "--tap", paramLabel = "JOINT", description = "a joint tapped and flexed")
  private String tapped;

  @Option(
      names = "--levels",
      split = ",",
      paramLabel = "DB",
      description = "levels after each stroke, or while tapped")
  private List<Double> levels;

  @Option(
      names = "--quiet",
      split = ",",
      paramLabel = "DB",
      description = "levels while nothing was touched")
  private List<Double> quiet;

  @Option(
      names = "--mended",
      paramLabel = "JOINT",
      description = "was mended: measure again where the signal was missing")
  private String mended;

  @Option(names = "--rail-alarm", paramLabel = "TEXT", description = "a rail alarm that is active")
  private List<String> railAlarms;

  @Option(names = "--rails-well", description = "no rail alarm is active any more")
  private boolean railsWell;

  @Override
  String examples() {
    return "silent-head";
  }

  @Override
  String templates() {
    return "record-chain, play-chain, receiver, amplifier";
  }

  @Override
  LocateSession parse(String text) {
    return LocateFile.read(text);
  }

  @Override
  String write(LocateSession session) {
    return LocateFile.write(session);
  }

  @Override
  LocateSession fromSheet(JobSheet effective) {
    return LocateSession.start(firstamp.locate.SheetPath.graph(effective));
  }

  @Override
  LocateSession begin(LocateSession session) {
    return new LocateSession(session.graph(), session.settings(), session.railAlarms(), List.of());
  }

  @Override
  LocateSession undone(LocateSession session) {
    return session.undo();
  }

  @Override
  LocateSession change(LocateSession session) throws CliFailure {
    LocateSession changed = powerUp == null ? session : fromLog(session);
    if (railsWell) {
      changed = changed.withRailAlarms(List.of());
    }
    if (railAlarms != null) {
      changed = changed.withRailAlarms(railAlarms);
    }
    Observation observation = observation(session.graph());
    return observation == null ? changed : changed.with(observation);
  }

  /** Adds what the clip found in a logged power-up, and the rail alarms that stood in the end. */
  private LocateSession fromLog(LocateSession session) throws CliFailure {
    BenchLog log = log();
    try {
      PowerUpReader reader = log.find(powerUp);
      sameSet(session, reader.entry());
      SearchState found = SignalSearch.of(reader, session.graph());
      if (found.search().observations().isEmpty() && found.search().railAlarms().isEmpty()) {
        throw new CliFailure(
            ExitCode.BAD_DATA,
            Said.of("locate.nothing-measured", reader.entry().number(), session.graph().name()));
      }
      LocateSession changed = session.withRailAlarms(found.search().railAlarms());
      for (Observation observation : found.search().observations()) {
        changed = changed.with(observation);
      }
      return changed;
    } catch (LogException failed) {
      throw Logs.failure(failed);
    } catch (SheetException bad) {
      throw new CliFailure(ExitCode.BAD_DATA, Explained.of(bad), bad);
    } finally {
      LiveSetup.closeLog(log, speech);
    }
  }

  /** A file made from a template has the template's name and takes from any set. */
  private void sameSet(LocateSession session, PowerUpEntry entry) throws CliFailure {
    String name = session.graph().name();
    if (name.equals(entry.setName())) {
      return;
    }
    for (String template : templates().split(", ")) {
      if (parse(StateFiles.bundled(template, templates())).graph().name().equals(name)) {
        return;
      }
    }
    throw new CliFailure(
        ExitCode.BAD_DATA,
        Said.of("locate.power-up-is-of-this", entry.number(), entry.setName(), name));
  }

  private Observation observation(SignalGraph graph) {
    List<String> points = graph.points().stream().map(SignalGraph.PathPoint::name).toList();
    List<String> joints = graph.joints().stream().map(SignalGraph.PathJoint::name).toList();
    at = Names.of(Said.of("name.what.point"), at, points);
    drivenAt = Names.of(Said.of("name.what.point"), drivenAt, points);
    mode =
        Names.of(
            Said.of("name.what.mode"),
            mode,
            graph.modes().stream().map(SignalGraph.Mode::name).toList());
    worked = Names.of(Said.of("name.what.joint"), worked, joints);
    tapped = Names.of(Said.of("name.what.joint"), tapped, joints);
    mended = Names.of(Said.of("name.what.joint"), mended, joints);
    return observation();
  }

  private Observation observation() {
    if (mended != null) {
      return new Observation.Mended(mended);
    }
    if (worked != null) {
      return new Observation.Strokes(worked, levels == null ? List.of() : levels);
    }
    if (tapped != null) {
      return new Observation.Taps(
          tapped, quiet == null ? List.of() : quiet, levels == null ? List.of() : levels);
    }
    if (at == null) {
      if (level != null || there || gone) {
        throw new UnfitValue(Said.of("locate.at-is-missing"));
      }
      return null;
    }
    if ((level != null ? 1 : 0) + (there ? 1 : 0) + (gone ? 1 : 0) != 1) {
      throw new UnfitValue(Said.of("locate.what-was-at", at));
    }
    return level != null
        ? new Observation.Level(at, mode, drivenAt, level, uncertaintyDb, atMost)
        : new Observation.Heard(at, mode, drivenAt, there);
  }

  @Override
  int show(LocateSession session) {
    return new LocateText(all, json, speech).print(session);
  }

  @Override
  List<Stage<LocateSession>> stages(LocateSession whole) {
    List<Stage<LocateSession>> stages = new ArrayList<>();
    LocateSession session = begin(whole);
    stages.add(stage(null, session));
    for (Observation observation : whole.observations()) {
      session = session.with(observation);
      stages.add(stage(speech.in(observation.words()), session));
    }
    return stages;
  }

  private Stage<LocateSession> stage(String step, LocateSession session) {
    return new Stage<>(step, session, () -> show(session));
  }
}
