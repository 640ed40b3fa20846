package firstamp.cli.command;

import firstamp.cli.output.CliFailure;
import firstamp.cli.output.ExitCode;
import firstamp.cli.output.Logs;
import firstamp.cli.output.Said;
import firstamp.cli.output.Speech;
import firstamp.cli.output.Studies;
import firstamp.cli.output.TrialText;
import firstamp.cli.run.LiveSetup;
import firstamp.cli.run.Names;
import firstamp.locate.SheetPath;
import firstamp.locate.wire.ClueKind;
import firstamp.locate.wire.LandingPlace;
import firstamp.locate.wire.LooseWire;
import firstamp.locate.wire.TrialVerdict;
import firstamp.locate.wire.TriedWire;
import firstamp.locate.wire.WireCase;
import firstamp.locate.wire.WireFile;
import firstamp.locate.wire.WireStep;
import firstamp.locate.wire.WireStory;
import firstamp.log.BenchLog;
import firstamp.log.LogException;
import firstamp.model.JobSheet;
import firstamp.model.TimeSource;
import firstamp.model.text.Explained;
import firstamp.sheet.SheetException;
import firstamp.study.PowerUpStudy;
import firstamp.study.Thinking;
import firstamp.study.TrialJudge;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Finds where a wire of unknown place belongs. */
@Command(
    name = "trial",
    description = {
      "Finds where a wire of unknown place belongs: what to check, where to try it next.",
      "Join and lift wires with the set off and its capacitors discharged. Readings that cannot both be"
          + " true are refused (64); a power-up of another set, of another wire or that never ran is"
          + " refused (65).",
      "--new and --example know screened-lead and cotton-leads.",
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  firstamp trial wires.json --sheet set.json          the wires that a job sheet names",
      "  firstamp trial wires.json --new screened-lead       a file to start from; edit it",
      "  firstamp trial wires.json --wire W3 --place P1 --clue reach",
      "  firstamp trial wires.json --wire W3 --place \"screen tag\" --ohm 47000",
      "  firstamp trial wires.json --wire W3 --volts-alone 1.4 --volts-loaded 0.2",
      "  firstamp trial wires.json --power-up last           judged from the log",
      "  firstamp trial wires.json --wire W3 --place P1 --verdict better --figure level --power-up"
          + " 7",
      "  firstamp trial wires.json --wire W3 --photo corner.jpg",
      "  firstamp trial wires.json --story                   what was done, with dates",
      "  firstamp trial --example cotton-leads           a worked example",
      "",
      "Mains and stored charge can kill: supply off and capacitors discharged before a wire is"
          + " touched.",
      "The probe stays off circuits above 60 V. Local electrical codes and licensed practice come"
          + " first.",
    })
public final class TrialCommand extends ThinkCommand<WireCase> {
  TrialCommand(Speech speech) {
    super(speech);
  }

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

  @Option(
      names = "--known",
      paramLabel = "NOTE",
      description = "what reads so low to the chassis: a winding, a resistor")
  private String known;

  @Option(names = "--volts-alone", paramLabel = "V", description = "volts of the insulated end")
  private Double voltsAlone;

  @Option(names = "--volts-loaded", paramLabel = "V", description = "with 10 kohm to the chassis")
  private Double voltsLoaded;

  @Option(names = "--volts", paramLabel = "V", description = "volts of the place, nothing joined")
  private Double volts;

  @Option(
      names = "--verdict",
      paramLabel = "WORD",
      description =
          "of a trial: short, over-draw, worse, no-change or better; left out = judged from the"
              + " log")
  private String verdict;

  @Option(names = "--figure", paramLabel = "NAME", description = "figure that became better")
  private List<String> figures;

  @Option(names = "--moved", paramLabel = "NOTE", description = "the wire was moved to the place")
  private String moved;

  @Option(names = "--photo", paramLabel = "PATH", description = "a photograph of this wire")
  private Path photo;

  @Option(names = "--story", description = "what was done so far, with dates")
  private boolean story;

  @Override
  String examples() {
    return "screened-lead, cotton-leads";
  }

  @Override
  String templates() {
    return examples();
  }

  @Override
  WireCase parse(String text) {
    return WireFile.read(text);
  }

  @Override
  String write(WireCase wires) {
    return WireFile.write(wires);
  }

  @Override
  WireCase fromSheet(JobSheet effective) {
    return SheetPath.wires(effective);
  }

  @Override
  WireCase begin(WireCase wires) {
    return wires.begin();
  }

  @Override
  WireCase undone(WireCase wires) {
    return wires.undo();
  }

  @Override
  WireCase change(WireCase wires) throws CliFailure {
    WireStep step = step(wires, name(wires));
    return step == null
        ? wires
        : wires.with(new WireStep.Dated(step, TimeSource.system().epochMillis()));
  }

  private String name(WireCase wires) {
    return wire == null
        ? wires.wires().get(0).name()
        : Names.of(
            Said.of("name.what.wire"), wire, wires.wires().stream().map(LooseWire::name).toList());
  }

  private WireStep step(WireCase wires, String name) throws CliFailure {
    if (clue != null) {
      return new WireStep.Clue(name, needsPlace(wires), ClueKind.of(clue), !against);
    }
    if (hunch != null) {
      return new WireStep.Hunch(name, needsPlace(wires), hunch);
    }
    WireStep cold = cold(wires, name);
    if (cold != null) {
      return cold;
    }
    if (known != null) {
      return new WireStep.Known(name, known);
    }
    if (voltsAlone != null || voltsLoaded != null) {
      if (voltsAlone == null || voltsLoaded == null) {
        throw new IllegalArgumentException("--volts-alone and --volts-loaded belong together");
      }
      return new WireStep.SourceTest(name, voltsAlone, voltsLoaded);
    }
    if (volts != null) {
      return new WireStep.PlaceVolts(needsPlace(wires), volts);
    }
    if (verdict != null) {
      return new WireStep.Trial(
          name,
          needsPlace(wires),
          powerUp == null ? null : number(),
          TrialVerdict.of(verdict),
          figures == null ? List.of() : figures);
    }
    if (powerUp != null) {
      return judged(wires);
    }
    if (photo != null) {
      return new WireStep.Photograph(name, photo.toString(), StateFiles.sha256(photo));
    }
    return moved == null ? null : new WireStep.Moved(name, needsPlace(wires), moved);
  }

  private WireStep cold(WireCase wires, String name) {
    if (ohm != null) {
      return wire == null
          ? new WireStep.PlaceOhms(needsPlace(wires), ohm)
          : new WireStep.WireOhms(name, needsPlace(wires), ohm, otherWayOhm);
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
    return null;
  }

  private int number() {
    try {
      return Integer.parseInt(powerUp);
    } catch (NumberFormatException word) {
      throw new IllegalArgumentException(
          "--power-up " + powerUp + " with --verdict: give its number", word);
    }
  }

  /** The verdict of a logged power-up, compared with the last good one. */
  private WireStep judged(WireCase wires) throws CliFailure {
    BenchLog log = log();
    try {
      PowerUpStudy trial = Studies.read(log, powerUp);
      TriedWire tried = tried(wires, Thinking.tried(trial.entry()));
      TrialJudge.Judged judged = TrialJudge.judge(log, trial, wires, tried);
      speech.note(judged.words());
      return judged.step();
    } catch (TrialJudge.Refused refused) {
      int code = refused.nothingToCompare() ? ExitCode.NO_INPUT : ExitCode.BAD_DATA;
      throw new CliFailure(code, Explained.of(refused), refused);
    } catch (LogException failed) {
      throw Logs.failure(failed);
    } catch (SheetException bad) {
      throw new CliFailure(ExitCode.BAD_DATA, Explained.of(bad), bad);
    } finally {
      LiveSetup.closeLog(log, speech);
    }
  }

  /** What is typed goes before what the power-up says. */
  private TriedWire tried(WireCase wires, TriedWire logged) {
    String at = place == null && logged != null ? logged.place() : needsPlace(wires);
    return new TriedWire(wire == null && logged != null ? logged.wire() : name(wires), at);
  }

  private String needsPlace(WireCase wires) {
    if (place == null) {
      throw new IllegalArgumentException("--place PLACE is missing: which place?");
    }
    return Names.of(
        Said.of("name.what.place"),
        place,
        wires.places().stream().map(LandingPlace::name).toList());
  }

  @Override
  int show(WireCase wires) {
    if (story) {
      WireStory.of(wires, ZoneId.systemDefault(), speech.wires()).forEach(System.out::println);
    } else {
      new TrialText(all, json, speech).print(wires, name(wires));
    }
    return ExitCode.NORMAL;
  }

  @Override
  List<Stage<WireCase>> stages(WireCase whole) {
    List<Stage<WireCase>> stages = new ArrayList<>();
    WireCase begin = begin(whole);
    stages.add(stage(null, begin, begin.wires().get(0).name()));
    for (int count = 1; count <= whole.steps().size(); count++) {
      WireStep step = whole.steps().get(count - 1);
      WireCase wires = whole.upTo(count);
      for (LooseWire one : wires.wires()) {
        if (step.concerns(one.name())) {
          stages.add(stage(speech.wires().step(step), wires, one.name()));
        }
      }
    }
    return stages;
  }

  private Stage<WireCase> stage(String step, WireCase wires, String name) {
    return new Stage<>(step, wires, () -> new TrialText(all, json, speech).print(wires, name));
  }
}
