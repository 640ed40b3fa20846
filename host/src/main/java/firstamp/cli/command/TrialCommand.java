package firstamp.cli.command;

import firstamp.cli.output.CliFailure;
import firstamp.cli.output.ExitCode;
import firstamp.cli.output.Logs;
import firstamp.cli.output.Speech;
import firstamp.cli.output.Studies;
import firstamp.cli.output.TrialText;
import firstamp.cli.run.LiveSetup;
import firstamp.locate.SheetPath;
import firstamp.locate.wire.LooseWire;
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
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
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
public final class TrialCommand extends FaultFindingCommand<WireCase> {
  TrialCommand(Speech speech) {
    super(speech);
  }

  @Mixin private WireStepOptions steps;

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
    WireStep step = steps.measured(wires, powerUp);
    if (step == null) {
      step = powerUp == null ? steps.kept(wires) : judged(wires);
    }
    return step == null
        ? wires
        : wires.with(new WireStep.Dated(step, TimeSource.system().epochMillis()));
  }

  /** The verdict of a logged power-up, compared with the last good one. */
  private WireStep judged(WireCase wires) throws CliFailure {
    BenchLog log = log();
    try {
      PowerUpStudy trial = Studies.read(log, powerUp);
      TriedWire tried = steps.tried(wires, Thinking.tried(trial.entry()));
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

  @Override
  int show(WireCase wires) {
    if (story) {
      WireStory.of(wires, ZoneId.systemDefault(), speech.wires()).forEach(System.out::println);
    } else {
      new TrialText(all, json, speech).print(wires, steps.name(wires));
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
