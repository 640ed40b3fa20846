package firstamp.cli;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import firstamp.locate.ClueKind;
import firstamp.locate.OddsWord;
import firstamp.locate.TrialVerdict;
import firstamp.locate.WireAnswer;
import firstamp.locate.WireCase;
import firstamp.locate.WireFile;
import firstamp.locate.WireStep;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Finds where a wire of unknown place belongs. */
@Command(
    name = "trial",
    description =
        "Finds where a wire of unknown place belongs: what to check, where to try it next.",
    footerHeading = "%nExamples:%n",
    footer = {
      "  firstamp trial wires.json --new screened-lead       a file to start from; edit it",
      "  firstamp trial wires.json --wire W3 --place P1 --clue reach",
      "  firstamp trial wires.json --wire W3 --place \"screen tag\" --ohm 47000",
      "  firstamp trial wires.json --wire W3 --volts-alone 1.4 --volts-loaded 0.2",
      "  firstamp trial wires.json --wire W3 --place P1 --verdict better --figure level --power-up 7",
      "  firstamp trial --example positive-chassis           a worked example",
      "",
      "Mains and stored charge can kill: supply off and capacitors discharged before a wire is touched.",
      "The probe stays off circuits above 60 V. Local electrical codes and licensed practice come first.",
    })
final class TrialCommand implements Callable<Integer> {
  static final String EXAMPLES = "screened-lead, positive-chassis";

  /** Places shown without --all. */
  private static final int SHOWN = 3;

  @Spec private CommandSpec spec;

  @Parameters(arity = "0..1", paramLabel = "FILE", description = "state file (JSON)")
  private Path file;

  @Option(names = "--new", paramLabel = "NAME", description = "start the file from: " + EXAMPLES)
  private String template;

  @Option(names = "--example", paramLabel = "NAME", description = "worked example: " + EXAMPLES)
  private String example;

  @Option(names = "--wire", paramLabel = "WIRE", description = "the wire (default the first)")
  private String wire;

  @Option(names = "--place", paramLabel = "PLACE", description = "the place")
  private String place;

  @Option(
      names = "--clue",
      paramLabel = "KIND",
      description =
          "colour, same-elsewhere, reach, old-solder, build, continuity or picture speaks for the"
              + " place")
  private String clue;

  @Option(names = "--against", description = "the clue speaks against the place")
  private boolean against;

  @Option(
      names = "--hunch",
      paramLabel = "WORD",
      description = "hardly, perhaps, probably or surely")
  private String hunch;

  @Option(
      names = "--ohm",
      paramLabel = "OHM",
      description = "cold: wire to place; without --wire: place to chassis")
  private Double ohm;

  @Option(names = "--other-way", paramLabel = "OHM", description = "the same with leads swapped")
  private Double otherWayOhm;

  @Option(names = "--diode", paramLabel = "V", description = "cold: junction, volts forward")
  private Double diodeV;

  @Option(
      names = "--swing",
      split = ",",
      paramLabel = "OHM,OHM,S",
      description = "cold: ohms that climb, first, last, seconds")
  private List<Double> swing;

  @Option(names = "--volts-alone", paramLabel = "V", description = "volts of the insulated end")
  private Double voltsAlone;

  @Option(names = "--volts-loaded", paramLabel = "V", description = "with 10 kohm to the chassis")
  private Double voltsLoaded;

  @Option(names = "--volts", paramLabel = "V", description = "volts of the place, nothing joined")
  private Double volts;

  @Option(
      names = "--verdict",
      paramLabel = "WORD",
      description = "of a trial: short, over-draw, worse, no-change or better")
  private String verdict;

  @Option(names = "--figure", paramLabel = "NAME", description = "figure that became better")
  private List<String> figures;

  @Option(names = "--power-up", paramLabel = "ID", description = "number of the trial in the log")
  private Integer powerUp;

  @Option(names = "--moved", paramLabel = "NOTE", description = "the wire was moved to the place")
  private String moved;

  @Option(names = "--undo", description = "take back the last step")
  private boolean undo;

  @Option(names = "--all", description = "every place, with reasons")
  private boolean all;

  @Option(names = "--json", description = "one JSON object per line")
  private boolean json;

  @Override
  public Integer call() throws CliFailure {
    if (example != null) {
      return replay(WireFile.read(StateFiles.bundled(example, EXAMPLES)));
    }
    if (file == null) {
      throw new ParameterException(spec.commandLine(), "a state file or --example is missing");
    }
    if (template != null) {
      WireCase whole = WireFile.read(StateFiles.bundled(template, EXAMPLES));
      StateFiles.create(file, WireFile.write(without(whole)));
    }
    WireCase before = read();
    WireCase after = change(before);
    if (!after.equals(before)) {
      StateFiles.write(file, WireFile.write(after));
    }
    String shown = wire == null ? after.wires().get(0).name() : wire;
    try {
      show(after, shown);
    } catch (IllegalArgumentException unknown) {
      throw new ParameterException(spec.commandLine(), unknown.getMessage(), unknown);
    }
    return ExitCode.NORMAL;
  }

  private static WireCase without(WireCase whole) {
    return new WireCase(whole.set(), whole.wires(), whole.places(), List.of());
  }

  private WireCase read() throws CliFailure {
    String text = StateFiles.read(file, "Start one with --new screened-lead, for example.");
    try {
      return WireFile.read(text);
    } catch (IllegalArgumentException bad) {
      throw new CliFailure(ExitCode.BAD_DATA, file + ": " + bad.getMessage(), bad);
    }
  }

  private WireCase change(WireCase wires) {
    try {
      WireCase changed = undo ? wires.undo() : wires;
      WireStep step = step(wire == null ? changed.wires().get(0).name() : wire);
      return step == null ? changed : changed.with(step);
    } catch (IllegalArgumentException unfit) {
      throw new ParameterException(spec.commandLine(), unfit.getMessage(), unfit);
    }
  }

  private WireStep step(String name) {
    if (clue != null) {
      return new WireStep.Clue(name, needsPlace(), ClueKind.of(clue), !against);
    }
    if (hunch != null) {
      return new WireStep.Hunch(name, needsPlace(), hunch);
    }
    if (ohm != null) {
      return wire == null
          ? new WireStep.PlaceOhms(needsPlace(), ohm)
          : new WireStep.WireOhms(name, needsPlace(), ohm, otherWayOhm);
    }
    if (diodeV != null) {
      return new WireStep.Diode(name, diodeV, null);
    }
    if (swing != null) {
      if (swing.size() != 3) {
        throw new IllegalArgumentException("--swing needs first ohm, last ohm, seconds");
      }
      return new WireStep.Swing(name, swing.get(0), swing.get(1), swing.get(2));
    }
    if (voltsAlone != null || voltsLoaded != null) {
      if (voltsAlone == null || voltsLoaded == null) {
        throw new IllegalArgumentException("--volts-alone and --volts-loaded belong together");
      }
      return new WireStep.SourceTest(name, voltsAlone, voltsLoaded);
    }
    if (volts != null) {
      return new WireStep.PlaceVolts(needsPlace(), volts);
    }
    if (verdict != null) {
      return new WireStep.Trial(
          name,
          needsPlace(),
          powerUp,
          TrialVerdict.of(verdict),
          figures == null ? List.of() : figures);
    }
    return moved == null ? null : new WireStep.Moved(name, needsPlace(), moved);
  }

  private String needsPlace() {
    if (place == null) {
      throw new IllegalArgumentException("--place PLACE is missing: which place?");
    }
    return place;
  }

  /** The steps of an example, one after the other. */
  private int replay(WireCase whole) {
    WireCase wires = without(whole);
    show(wires, wires.wires().get(0).name());
    for (WireStep step : whole.steps()) {
      wires = wires.with(step);
      for (WireCase.Wire one : wires.wires()) {
        if (step.concerns(one.name())) {
          if (!json) {
            System.out.println();
            System.out.println("> " + step);
          }
          show(wires, one.name());
        }
      }
    }
    return ExitCode.NORMAL;
  }

  private void show(WireCase wires, String name) {
    WireAnswer answer = wires.answer(name);
    if (json) {
      new JsonLines(System.out).print(line(wires, answer));
      return;
    }
    answer.warnings().forEach(warning -> System.out.println("Mind: " + warning));
    System.out.println(answer.sentence());
    int most = all ? answer.places().size() : Math.min(SHOWN, answer.places().size());
    for (WireAnswer.PlaceOdds odds : answer.places().subList(0, most)) {
      String reason = odds.reason() == null ? "" : " (" + odds.reason() + ")";
      System.out.println("  " + odds.place() + ": " + odds.word().words() + reason);
    }
    WireCase.Wire wireShown =
        wires.wires().stream().filter(one -> one.name().equals(name)).findFirst().orElseThrow();
    if (wireShown.colour() != null) {
      System.out.println("  colour " + wireShown.colour() + " (says little)");
    }
  }

  private static ObjectNode line(WireCase wires, WireAnswer answer) {
    ObjectNode node = JsonLines.object("wire");
    node.put("wire", answer.wire()).put("number", wires.steps().size());
    node.put("state", answer.state().id()).put("text", answer.sentence());
    answer.warnings().forEach(node.putArray("warnings")::add);
    ArrayNode places = node.putArray("places");
    for (WireAnswer.PlaceOdds odds : answer.places()) {
      ObjectNode one = places.addObject().put("place", odds.place()).put("harm", odds.harm());
      one.put("word", odds.word().words()).put("share", odds.share());
      one.put("struckOut", odds.word() == OddsWord.STRUCK_OUT);
      if (odds.reason() != null) {
        one.put("reason", odds.reason());
      }
    }
    if (answer.next() != null) {
      WireAnswer.Trial next = answer.next();
      ObjectNode one = node.putObject("next").put("place", next.place());
      if (next.throughOhm() != null) {
        one.put("throughOhm", next.throughOhm());
      }
      one.put("worstA", next.worstA()).put("worstW", next.worstW());
      one.put("limitA", next.limitA());
    }
    return node;
  }
}
