package firstamp.cli.command;

import firstamp.cli.output.CliFailure;
import firstamp.cli.output.Logs;
import firstamp.cli.output.Said;
import firstamp.cli.output.Speech;
import firstamp.cli.output.UsageProblem;
import firstamp.cli.run.LiveSetup;
import firstamp.cli.run.NameChoice;
import firstamp.cli.run.RunOptions;
import firstamp.cli.run.Sheets;
import firstamp.cli.run.ThisBench;
import firstamp.cli.run.Trials;
import firstamp.cli.run.WindowRun;
import firstamp.emulate.EmulatedProbe;
import firstamp.emulate.Scenarios;
import firstamp.emulate.line.Pace;
import firstamp.emulate.scenario.WorkedExamples;
import firstamp.locate.wire.TriedWire;
import firstamp.locate.wire.WireCase;
import firstamp.log.BenchLog;
import firstamp.pipeline.ProbeSettings;
import firstamp.run.ClipFollower;
import firstamp.run.RunSetup;
import firstamp.run.questions.ArmGate;
import firstamp.run.talk.PortOpener;
import java.nio.file.Path;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** An invented set on the emulated probe, through the whole chain. */
@Command(
    name = "demo",
    description =
        "An invented set (or a waveform file) on the practice box, through the whole chain."
            + " Nothing real is switched.",
    footerHeading = "%nExamples:%n",
    footer = {
      "  firstamp demo",
      "  firstamp demo --scenario wire-short --headless --for 5s",
      "  firstamp demo --headless --json --speed max --scenario lost-head --for 5s --log try.db",
      "  firstamp demo --headless --waveform short.csv --sheet set.json --for 3s",
      "  firstamp demo --headless --scenario bring-up --steps",
      "  firstamp demo --headless --scenario healthy --for 3s --save-waveform healthy.csv",
      "  firstamp demo --headless --example silent-head    where a signal is lost, found with a"
          + " clip",
      "  firstamp demo --headless --example screened-lead  where a wire belongs",
    })
public final class DemoCommand implements Callable<Integer> {
  private static final long USUAL_SECONDS = 10;

  private final Speech speech;

  DemoCommand(Speech speech) {
    this.speech = speech;
  }

  /** Names of the scenarios, for the help text. */
  static final class ScenarioNames implements Iterable<String> {
    @Override
    public Iterator<String> iterator() {
      return Scenarios.names().iterator();
    }
  }

  @Mixin private RunOptions run;

  @Mixin private DemoBox box;

  @Option(
      names = "--scenario",
      paramLabel = "NAME",
      defaultValue = "healthy",
      completionCandidates = ScenarioNames.class,
      description =
          "what happens to the invented set: ${COMPLETION-CANDIDATES} (default ${DEFAULT-VALUE})")
  private String scenario;

  @Option(
      names = "--sheet",
      paramLabel = "FILE",
      description = "job sheet; with a scenario the set's own is the default")
  private Path sheet;

  @Option(
      names = "--speed",
      paramLabel = "SPEED",
      defaultValue = "1",
      description = "1 = real time, max = as fast as possible")
  private String speed;

  @Option(
      names = "--example",
      paramLabel = "NAME",
      description = "a worked example with its power-ups: silent-head, screened-lead, cotton-leads")
  private String example;

  @Option(names = "--reduced", description = "the reduced stream: readings only")
  private boolean reduced;

  @Spec private CommandSpec spec;

  @Override
  public Integer call() throws CliFailure {
    run.refuseWhatTheWindowLeavesOut(spec);
    if (example != null) {
      checkExample();
    }
    if (!run.headless) {
      ThisBench.prepare(Logs.demoFile(run.log), run.look);
    }
    if (example != null) {
      if (run.headless || !Scenarios.names().contains(example)) {
        return example();
      }
      // In the window the person looks for the signal: key F on the watching page.
      scenario = example;
    }
    if (box.contradicts()) {
      throw new UsageProblem(spec.commandLine(), Said.of("demo.give-one-of-new-box"));
    }
    Sheets.Ready said = run.fitted(readySheet());
    box.checkFiles(said.effective());
    Pace pace = pace();
    if (run.headless) {
      box.say();
    }
    TriedWire tried = Trials.of(said.effective(), run);
    BenchLog log = Logs.openForWriting(Logs.demoFile(run.log), speech);
    if (!box.hasWaveform() && Scenarios.fillsDisk(scenario)) {
      log = log.onDisk(box::closedOnce);
    }
    Sheets.Ready ready = Trials.tightened(said, tried, log, speech);
    Sheets.warn(ready, speech);
    RunSetup setup =
        new RunSetup(
                ready.effective(),
                new ProbeSettings(RunOptions.forProbe(run.steps, ready.effective())),
                Trials.label(run, tried),
                !reduced,
                forMicros(),
                0,
                false,
                LiveSetup.quietMicros(run.countdown, run.headless ? 0 : 3),
                pace == Pace.REAL_TIME,
                run.headless ? ArmGate.alwaysOpen() : new ArmGate(List.of()))
            .trying(tried);
    ClipFollower clip = ClipFollower.of(ready.effective());
    PortOpener opener =
        () -> {
          EmulatedProbe probe = box.open(scenario, ready.effective(), run.pedal, pace);
          clip.hands(probe.hands());
          return probe;
        };
    int exitCode = LiveSetup.run(run, setup, ready.texts(), opener, log, true, null, null, clip);
    Logs.sayKept(log, run.log, speech);
    box.saveWaveform();
    return exitCode;
  }

  /** Without a time a window waits for the person; nobody would end a run that only prints. */
  private Long forMicros() {
    boolean endsByItself = box.hasWaveform() || run.steps || run.soakMicros != null;
    return run.forMicros != null || !run.headless || endsByItself
        ? run.forMicros
        : Long.valueOf(Math.max(USUAL_SECONDS, Scenarios.seconds(scenario)) * 1_000_000L);
  }

  private void checkExample() {
    if (!WorkedExamples.names().contains(example)) {
      throw new UsageProblem(
          spec.commandLine(),
          NameChoice.text(
              Said.of("name.what.example"), example, Map.of("", WorkedExamples.names())));
    }
  }

  private int example() throws CliFailure {
    BenchLog log = Logs.openForWriting(Logs.demoFile(run.log), speech);
    WireCase wires;
    try {
      DemoExample worked = new DemoExample(example, log, run.json, box.seed(), speech);
      if (run.headless) {
        int exitCode = worked.run();
        Logs.sayKept(log, run.log, speech);
        return exitCode;
      }
      wires = worked.wires(true);
    } finally {
      LiveSetup.closeLog(log, speech);
    }
    return WindowRun.wires(wires, log.file(), run.look);
  }

  private Sheets.Ready readySheet() throws CliFailure {
    if (box.hasWaveform() && sheet == null) {
      throw new UsageProblem(spec.commandLine(), Said.of("demo.waveform-needs-sheet-file-what"));
    }
    if (!box.hasWaveform() && !Scenarios.names().contains(scenario)) {
      throw new UsageProblem(
          spec.commandLine(),
          NameChoice.text(Said.of("name.what.scenario"), scenario, Scenarios.groups()));
    }
    return sheet != null
        ? Sheets.read(sheet)
        : Sheets.parse("sheet of scenario " + scenario, Scenarios.sheetJson(scenario));
  }

  private Pace pace() {
    return switch (speed) {
      case "1" -> Pace.REAL_TIME;
      case "max" -> Pace.MAX;
      default ->
          throw new UsageProblem(
              spec.commandLine(), Said.of("demo.speed-expected-1-or-max", speed));
    };
  }
}
