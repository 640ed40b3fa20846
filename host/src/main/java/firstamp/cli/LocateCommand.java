package firstamp.cli;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import firstamp.locate.LocateAnswer;
import firstamp.locate.LocateFile;
import firstamp.locate.LocateSession;
import firstamp.locate.Observation;
import firstamp.model.Numbers;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Finds where a signal stops. */
@Command(
    name = "locate",
    description =
        "Finds where a signal stops: says where to measure next, and in the end where it is lost.",
    footerHeading = "%nExamples:%n",
    footer = {
      "  firstamp locate head.json --new record-chain        a path to start from; edit the levels",
      "  firstamp locate head.json --at head --gone          the complaint",
      "  firstamp locate head.json --at meter --level -18.4 --plus-minus 0.5",
      "  firstamp locate head.json --work \"head contact, record\" --levels -42,-11,-5,-30",
      "  firstamp locate head.json --mended \"head contact, record\"",
      "  firstamp locate --example silent-head               a worked example",
      "",
      "Only with the supply rails in order: while one has an alarm, name it with --rail-alarm.",
    })
final class LocateCommand implements Callable<Integer> {
  static final String TEMPLATES = "record-chain, play-chain, receiver, amplifier";
  static final String EXAMPLES = "silent-head";

  /** Joints shown without --all. */
  private static final int SHOWN = 3;

  @Spec private CommandSpec spec;

  @Parameters(arity = "0..1", paramLabel = "FILE", description = "state file (JSON)")
  private Path file;

  @Option(names = "--new", paramLabel = "PATH", description = "start the file: " + TEMPLATES)
  private String template;

  @Option(names = "--example", paramLabel = "NAME", description = "worked example: " + EXAMPLES)
  private String example;

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

  @Option(names = "--mended", paramLabel = "JOINT", description = "measure again from the start")
  private String mended;

  @Option(names = "--rail-alarm", paramLabel = "TEXT", description = "alarm of a rail that stands")
  private List<String> railAlarms;

  @Option(names = "--rails-well", description = "no rail alarm stands any more")
  private boolean railsWell;

  @Option(names = "--undo", description = "take back the last step")
  private boolean undo;

  @Option(names = "--all", description = "every joint, not the first three")
  private boolean all;

  @Option(names = "--json", description = "one JSON object per line")
  private boolean json;

  @Override
  public Integer call() throws CliFailure {
    if (example != null) {
      return replay(LocateFile.read(StateFiles.bundled(example, EXAMPLES)));
    }
    if (file == null) {
      throw new ParameterException(spec.commandLine(), "a state file or --example is missing");
    }
    if (template != null) {
      StateFiles.create(file, StateFiles.bundled(template, TEMPLATES));
    }
    LocateSession before = read();
    LocateSession after = change(before);
    if (!after.equals(before)) {
      StateFiles.write(file, LocateFile.write(after));
    }
    return show(after);
  }

  private LocateSession read() throws CliFailure {
    String text = StateFiles.read(file, "Start one with --new record-chain, for example.");
    try {
      return LocateFile.read(text);
    } catch (IllegalArgumentException bad) {
      throw new CliFailure(ExitCode.BAD_DATA, file + ": " + bad.getMessage(), bad);
    }
  }

  private LocateSession change(LocateSession session) {
    try {
      LocateSession changed = undo ? session.undo() : session;
      if (railsWell) {
        changed = changed.withRailAlarms(List.of());
      }
      if (railAlarms != null) {
        changed = changed.withRailAlarms(railAlarms);
      }
      Observation observation = observation();
      return observation == null ? changed : changed.with(observation);
    } catch (IllegalArgumentException unfit) {
      throw new ParameterException(spec.commandLine(), unfit.getMessage(), unfit);
    }
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
        throw new IllegalArgumentException("--at POINT is missing: where was that measured?");
      }
      return null;
    }
    if ((level != null ? 1 : 0) + (there ? 1 : 0) + (gone ? 1 : 0) != 1) {
      throw new IllegalArgumentException(
          "what was at " + at + "? Give one of --level DBV, --there, --gone.");
    }
    return level != null
        ? new Observation.Level(at, mode, drivenAt, level, uncertaintyDb)
        : new Observation.Heard(at, mode, drivenAt, there);
  }

  /** The steps of an example, one after the other. */
  private int replay(LocateSession whole) {
    LocateSession session =
        new LocateSession(whole.graph(), whole.settings(), whole.railAlarms(), List.of());
    show(session);
    for (Observation observation : whole.observations()) {
      session = session.with(observation);
      if (!json) {
        System.out.println();
        System.out.println("> " + words(observation));
      }
      show(session);
    }
    return ExitCode.NORMAL;
  }

  private static String words(Observation observation) {
    if (observation instanceof Observation.Level level) {
      return level.point() + ": " + Numbers.text(level.levelDbv()) + " dBV";
    } else if (observation instanceof Observation.Heard heard) {
      return heard.point() + ": " + (heard.there() ? "there" : "gone");
    } else if (observation instanceof Observation.Strokes strokes) {
      return strokes.joint() + " worked: " + strokes.levelsDb() + " dB";
    } else if (observation instanceof Observation.Taps taps) {
      return taps.joint() + " tapped: " + taps.touchedDb() + " dB";
    } else if (observation instanceof Observation.Mended mended) {
      return mended.joint() + " mended";
    }
    return "";
  }

  private int show(LocateSession session) {
    LocateAnswer answer = session.answer();
    if (json) {
      new JsonLines(System.out).print(line(session, answer));
    } else {
      System.out.println(answer.sentence());
      int most = all ? answer.odds().size() : Math.min(SHOWN, answer.odds().size());
      for (LocateAnswer.JointOdds odds : answer.odds().subList(0, most)) {
        System.out.println("  " + odds.joint() + ": " + odds.word().words());
      }
      answer.remarks().forEach(System.out::println);
    }
    return answer.state() == LocateAnswer.State.REFUSED ? ExitCode.REFUSED : ExitCode.NORMAL;
  }

  private static ObjectNode line(LocateSession session, LocateAnswer answer) {
    ObjectNode node = JsonLines.object("step");
    node.put("number", session.observations().size());
    node.put("state", answer.state().id());
    node.put("text", answer.sentence());
    if (answer.next() != null) {
      LocateAnswer.Next next = answer.next();
      ObjectNode place = node.putObject("next");
      place.put("point", next.point()).put("mode", next.mode());
      if (next.expectedDbv() != null) {
        place.put("expectedDbv", next.expectedDbv());
      }
      place.put("learntBits", next.bits());
      next.ifThere().forEach(place.putArray("ifThere")::add);
      next.ifGone().forEach(place.putArray("ifGone")::add);
    }
    ArrayNode joints = node.putArray("joints");
    for (LocateAnswer.JointOdds odds : answer.odds()) {
      ObjectNode joint = joints.addObject().put("joint", odds.joint());
      joint.put("word", odds.word().words()).put("share", odds.share());
    }
    node.put("twoLikely", answer.twoLikely());
    answer.remarks().forEach(node.putArray("remarks")::add);
    return node;
  }
}
