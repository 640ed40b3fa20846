package firstamp.cli.command;

import firstamp.alarm.OffWords;
import firstamp.cli.output.CliFailure;
import firstamp.cli.output.ExitCode;
import firstamp.cli.output.JsonLines;
import firstamp.cli.output.JsonRunOutput;
import firstamp.cli.output.LocateText;
import firstamp.cli.output.Logs;
import firstamp.cli.output.RunOutput;
import firstamp.cli.output.Said;
import firstamp.cli.output.Speech;
import firstamp.cli.output.TextRunOutput;
import firstamp.cli.output.TrialText;
import firstamp.cli.run.HeadlessRun;
import firstamp.cli.run.RunModes;
import firstamp.cli.run.RunOptions;
import firstamp.cli.run.Sheets;
import firstamp.cli.run.Trials;
import firstamp.emulate.EmulatedProbe;
import firstamp.emulate.ProbeOptions;
import firstamp.emulate.Scenarios;
import firstamp.emulate.line.Pace;
import firstamp.emulate.scenario.WorkedExamples;
import firstamp.locate.SheetPath;
import firstamp.locate.wire.LooseWire;
import firstamp.locate.wire.TriedWire;
import firstamp.locate.wire.WireCase;
import firstamp.locate.wire.WireFile;
import firstamp.locate.wire.WireStep;
import firstamp.log.BenchLog;
import firstamp.log.LogException;
import firstamp.model.text.Explained;
import firstamp.pipeline.ProbeSettings;
import firstamp.run.RunSetup;
import firstamp.run.questions.ArmGate;
import firstamp.sheet.SheetException;
import firstamp.study.PowerUpStudy;
import firstamp.study.Thinking;
import firstamp.study.TrialComparison;
import java.util.List;

/** A worked example: what a person thinks, and the power-ups in between on the emulated probe. */
final class DemoExample {
  private static final long QUIET_MICROS = 2_000_000;

  private final String name;
  private final BenchLog log;
  private final boolean json;
  private final long seed;
  private final Speech speech;

  DemoExample(String name, BenchLog log, boolean json, long seed, Speech speech) {
    this.speech = speech;
    this.name = name;
    this.log = log;
    this.json = json;
    this.seed = seed;
  }

  /** Runs it to its end; gives the exit code. */
  int run() throws CliFailure {
    List<WorkedExamples.Run> runs = WorkedExamples.runs(name);
    if (SheetPath.hasPath(sheet(runs.get(0)).effective())) {
      return search(runs.get(0));
    }
    wires(true);
    return ExitCode.NORMAL;
  }

  /** The silent head: the set is on, the clip goes where the search says. */
  private int search(WorkedExamples.Run run) throws CliFailure {
    Sheets.Ready ready = sheet(run);
    DemoHands hands = new DemoHands(SheetPath.graph(ready.effective()), "head", "meter");
    powerUp(run, ready, hands);
    new LocateText(false, json, speech).print(hands.state().search());
    return ExitCode.NORMAL;
  }

  /**
   * The wires of the example with its trials as the emulated probe saw them.
   *
   * @param aloud whether every step is printed
   */
  WireCase wires(boolean aloud) throws CliFailure {
    List<WorkedExamples.Run> runs = WorkedExamples.runs(name);
    WireCase whole =
        WireFile.read(StateFiles.bundled(name, String.join(", ", WorkedExamples.names())));
    WireCase wires = whole.begin();
    powerUp(runs.get(0), sheet(runs.get(0)), HeadlessRun.Companion.NONE);
    int next = 1;
    for (WireStep step : whole.steps()) {
      WireStep taken = step.bare();
      if (aloud && !json) {
        System.out.println();
        speech.out(Said.of("demo-example.step", said(taken)));
      }
      if (taken instanceof WireStep.Trial trial) {
        WorkedExamples.Run run = runs.get(next++);
        Sheets.Ready said = sheet(run);
        TriedWire tried = Thinking.tried(said.effective(), run.label());
        powerUp(run, Trials.tightened(said, tried, log, speech), HeadlessRun.Companion.NONE);
        taken = judged(trial);
        if (aloud && !json) {
          System.out.println(speech.wires().step(taken));
        }
      }
      wires = wires.with(taken);
      if (aloud) {
        show(wires, taken);
      }
    }
    return wires;
  }

  /** A trial has no verdict before it is made. */
  private String said(WireStep step) {
    return step instanceof WireStep.Trial trial
        ? speech.in(Said.of("demo-example.trial", trial.wire(), trial.place()))
        : speech.wires().step(step);
  }

  private void show(WireCase wires, WireStep step) {
    for (LooseWire one : wires.wires()) {
      if (step.concerns(one.name())) {
        new TrialText(false, json, speech).print(wires, one.name());
      }
    }
  }

  /** The trial with the verdict of the power-up that was just made. */
  private WireStep judged(WireStep.Trial trial) throws CliFailure {
    try {
      PowerUpStudy study = PowerUpStudy.of(log.find("last"));
      TrialComparison comparison = Thinking.compare(log, study, trial.wire());
      return new WireStep.Trial(
          trial.wire(),
          trial.place(),
          (int) study.entry().number(),
          comparison.judged().verdict(),
          comparison.judged().figures());
    } catch (LogException failed) {
      throw Logs.failure(failed);
    } catch (SheetException bad) {
      throw new CliFailure(ExitCode.BAD_DATA, Explained.of(bad), bad);
    }
  }

  private static Sheets.Ready sheet(WorkedExamples.Run run) throws CliFailure {
    return Sheets.parse("sheet of scenario " + run.scenario(), Scenarios.sheetJson(run.scenario()));
  }

  private void powerUp(WorkedExamples.Run run, Sheets.Ready ready, HeadlessRun.Companion companion)
      throws CliFailure {
    RunSetup setup =
        new RunSetup(
                ready.effective(),
                new ProbeSettings(ready.effective()),
                run.label(),
                true,
                (long) (run.forSeconds() * 1e6),
                0,
                false,
                QUIET_MICROS,
                false,
                ArmGate.alwaysOpen())
            .trying(Thinking.tried(ready.effective(), run.label()));
    RunOutput output =
        json
            ? new JsonRunOutput(new JsonLines(System.out), false)
            : new TextRunOutput(
                speech,
                System.out,
                System.err,
                false,
                false,
                OffWords.words(ready.effective()),
                ready.effective(),
                true);
    new HeadlessRun(
            setup,
            ready.texts(),
            () -> probe(run, companion),
            output,
            null,
            new RunModes(new RunOptions(speech), null, true, null),
            companion)
        .runKeepingLog(log);
  }

  private EmulatedProbe probe(WorkedExamples.Run run, HeadlessRun.Companion companion) {
    EmulatedProbe probe = Scenarios.open(run.scenario(), ProbeOptions.of(seed, Pace.MAX));
    if (companion instanceof DemoHands hands) {
      hands.at(probe.hands());
    }
    return probe;
  }
}
