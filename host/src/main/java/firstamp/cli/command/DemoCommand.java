package firstamp.cli.command;

import firstamp.cli.output.CliFailure;
import firstamp.cli.output.ExitCode;
import firstamp.cli.output.Logs;
import firstamp.cli.output.OutputFile;
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
import firstamp.emulate.ProbeOptions;
import firstamp.emulate.Scenarios;
import firstamp.emulate.Waveforms;
import firstamp.emulate.box.BoxKind;
import firstamp.emulate.line.Pace;
import firstamp.emulate.scenario.WorkedExamples;
import firstamp.emulate.wave.WaveformException;
import firstamp.locate.wire.TriedWire;
import firstamp.locate.wire.WireCase;
import firstamp.log.BenchLog;
import firstamp.model.PedalJob;
import firstamp.model.text.Explained;
import firstamp.model.text.FailureWords;
import firstamp.model.text.Worded;
import firstamp.pipeline.ProbeSettings;
import firstamp.run.ClipFollower;
import firstamp.run.RunSetup;
import firstamp.run.questions.ArmGate;
import firstamp.run.talk.PortOpener;
import java.io.IOException;
import java.nio.file.NoSuchFileException;
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
  private final Speech speech;

  DemoCommand(Speech speech) {
    this.speech = speech;
  }

  private static final long USUAL_SECONDS = 10;

  /** Names of the scenarios, for the help text. */
  static final class ScenarioNames implements Iterable<String> {
    @Override
    public Iterator<String> iterator() {
      return Scenarios.names().iterator();
    }
  }

  @Mixin private RunOptions run;

  @Option(
      names = "--scenario",
      paramLabel = "NAME",
      defaultValue = "healthy",
      completionCandidates = ScenarioNames.class,
      description =
          "what happens to the invented set: ${COMPLETION-CANDIDATES} (default ${DEFAULT-VALUE})")
  private String scenario;

  @Option(
      names = "--waveform",
      paramLabel = "CSV",
      description = "a waveform file instead of the invented set; needs --sheet")
  private Path waveform;

  @Option(
      names = "--sheet",
      paramLabel = "FILE",
      description = "job sheet; with a scenario the set's own is the default")
  private Path sheet;

  @Option(
      names = "--front-end",
      paramLabel = "FILE",
      description = "ranges, look and inputs behind the waveform (JSON)")
  private Path frontEnd;

  @Option(
      names = "--save-waveform",
      paramLabel = "CSV",
      description = "write what the set did as a waveform file")
  private Path saveWaveform;

  @Option(
      names = "--speed",
      paramLabel = "SPEED",
      defaultValue = "1",
      description = "1 = real time, max = as fast as possible")
  private String speed;

  @Option(
      names = "--seed",
      paramLabel = "N",
      defaultValue = "1",
      description = "of the box and its noise (default ${DEFAULT-VALUE})")
  private long seed;

  @Option(
      names = "--new-box",
      description = "a box that was never calibrated, instead of a calibrated one")
  private boolean newBox;

  @Option(names = "--ideal", description = "an exactly nominal box: no tolerances, no offsets")
  private boolean ideal;

  @Option(
      names = "--noise-counts",
      paramLabel = "X",
      defaultValue = "0.7",
      description = "noise of the converter, counts rms (default ${DEFAULT-VALUE})")
  private double noiseCounts;

  @Option(
      names = "--example",
      paramLabel = "NAME",
      description = "a worked example with its power-ups: silent-head, screened-lead, cotton-leads")
  private String example;

  @Option(names = "--reduced", description = "the reduced stream: readings only")
  private boolean reduced;

  @Spec private CommandSpec spec;

  private volatile EmulatedProbe opened;

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
    if (newBox && ideal || frontEnd != null && (newBox || ideal)) {
      throw new UsageProblem(spec.commandLine(), Said.of("demo.give-one-of-new-box"));
    }
    Sheets.Ready said = run.fitted(readySheet());
    checkFiles(said);
    Pace pace = pace();
    if (run.headless) {
      sayBox();
    }
    TriedWire tried = Trials.of(said.effective(), run);
    BenchLog log = Logs.openForWriting(Logs.demoFile(run.log), speech);
    if (waveform == null && Scenarios.fillsDisk(scenario)) {
      log = log.onDisk(() -> opened != null && opened.closedOnce());
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
          EmulatedProbe probe = probe(ready, pace);
          clip.hands(probe.hands());
          return probe;
        };
    int exitCode = LiveSetup.run(run, setup, ready.texts(), opener, log, true, null, null, clip);
    Logs.sayKept(log, run.log, speech);
    saveWaveform();
    return exitCode;
  }

  /** Without a time a window waits for the person; nobody would end a run that only prints. */
  private Long forMicros() {
    boolean endsByItself = waveform != null || run.steps || run.soakMicros != null;
    return run.forMicros != null || !run.headless || endsByItself
        ? run.forMicros
        : Long.valueOf(Math.max(USUAL_SECONDS, Scenarios.seconds(scenario)) * 1_000_000L);
  }

  /** What is behind the waveform is read before anything is begun, for an exit code of its own. */
  private void checkFiles(Sheets.Ready ready) throws CliFailure {
    if (saveWaveform != null) {
      OutputFile.checkFolder(saveWaveform);
    }
    if (waveform == null) {
      return;
    }
    try {
      Waveforms.open(
              waveform,
              frontEnd,
              ready.effective().supply().nominalV(),
              ProbeOptions.of(seed, Pace.MAX))
          .close();
    } catch (WaveformException bad) {
      throw new CliFailure(ExitCode.BAD_DATA, Explained.of(bad), bad);
    } catch (NoSuchFileException missing) {
      throw new CliFailure(
          ExitCode.NO_INPUT,
          Said.of(
              "demo.there-is-no-file-expected",
              missing.getFile(),
              Said.of(
                  missing.getFile().equals(waveform.toString())
                      ? "demo.waveform-file"
                      : "demo.front-end-file")),
          missing);
    } catch (IOException unreadable) {
      throw new CliFailure(
          ExitCode.NO_INPUT,
          Said.of("demo.the-files-of-the-waveform", FailureWords.worded(unreadable)),
          unreadable);
    }
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
      DemoExample worked = new DemoExample(example, log, run.json, seed, speech);
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

  private void saveWaveform() throws CliFailure {
    if (saveWaveform == null || opened == null) {
      return;
    }
    try {
      opened.saveWaveform(saveWaveform);
    } catch (IOException failed) {
      throw OutputFile.failure(saveWaveform, failed);
    }
  }

  private Sheets.Ready readySheet() throws CliFailure {
    if (waveform != null && sheet == null) {
      throw new UsageProblem(spec.commandLine(), Said.of("demo.waveform-needs-sheet-file-what"));
    }
    if (waveform == null && !Scenarios.names().contains(scenario)) {
      throw new UsageProblem(
          spec.commandLine(),
          NameChoice.text(Said.of("name.what.scenario"), scenario, Scenarios.groups()));
    }
    return sheet != null
        ? Sheets.read(sheet)
        : Sheets.parse("sheet of scenario " + scenario, Scenarios.sheetJson(scenario));
  }

  private BoxKind kind() {
    return ideal ? BoxKind.IDEAL : newBox ? BoxKind.NEW : BoxKind.SOLDERED;
  }

  /** Which box it is: its figures hang on it. */
  private void sayBox() {
    Worded which =
        frontEnd != null
            ? Said.of("demo.box.front-end")
            : ideal
                ? Said.of("demo.box.ideal")
                : Said.of(newBox ? "demo.box.new" : "demo.box.calibrated", seed);
    speech.err(Said.of("demo.practice-box", which));
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

  private EmulatedProbe probe(Sheets.Ready ready, Pace pace) throws IOException {
    ProbeOptions options =
        ProbeOptions.of(seed, pace)
            .withNoiseCounts(noiseCounts)
            .withPedal(run.pedal)
            .withBox(kind());
    if (saveWaveform != null) {
      options = options.withRecording();
    }
    EmulatedProbe probe =
        waveform == null
            ? Scenarios.open(scenario, options)
            : Waveforms.open(waveform, frontEnd, ready.effective().supply().nominalV(), options);
    // The practice foot holds; a front-end file says when a pedal is pressed otherwise.
    probe.foot(run.pedal == PedalJob.HOLD_TO_RUN && waveform == null);
    opened = probe;
    return probe;
  }
}
