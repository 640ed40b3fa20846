package firstamp.cli.command;

import firstamp.cli.output.CliFailure;
import firstamp.cli.output.ExitCode;
import firstamp.cli.output.Logs;
import firstamp.cli.output.Said;
import firstamp.cli.output.Speech;
import firstamp.cli.output.UsageProblem;
import firstamp.cli.output.UsageWords;
import firstamp.cli.run.LiveSetup;
import firstamp.cli.run.RunOptions;
import firstamp.cli.run.Sheets;
import firstamp.cli.run.SupplyPort;
import firstamp.cli.run.ThisBench;
import firstamp.cli.run.Trials;
import firstamp.link.PortException;
import firstamp.link.SerialPorts;
import firstamp.link.SerialProbePort;
import firstamp.locate.wire.TriedWire;
import firstamp.log.BenchLog;
import firstamp.log.LogException;
import firstamp.model.PedalJob;
import firstamp.model.ProbeEvent;
import firstamp.model.TimeSource;
import firstamp.model.text.Worded;
import firstamp.pipeline.ProbeSettings;
import firstamp.run.RunSetup;
import firstamp.run.questions.AnswerBook;
import firstamp.run.questions.ArmGate;
import firstamp.run.questions.Asking;
import firstamp.run.questions.Cautions;
import firstamp.run.questions.Questions;
import firstamp.run.talk.PortOpener;
import firstamp.supply.BenchSupply;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** The main job: a real set on a real probe. */
@Command(
    name = "watch",
    description = {
      "Powers up a set through the probe box while watching it.",
      "Mains and stored charge can kill. Circuits up to 60 V dc / 30 V rms only. The trip is an aid,"
          + " not a protective device;",
      "local electrical codes and licensed practice come first.",
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  firstamp watch --port /dev/ttyUSB0 --sheet set.json",
      "  firstamp watch --port /dev/ttyUSB0 --sheet set.json --headless --for 10s --accept floating-supply,above-60,tape-out",
      "  firstamp watch --port /dev/ttyUSB0 --sheet set.json --restore 7 --different wire     after it switched itself off (number 7)",
      "  firstamp watch --port /dev/ttyUSB0 --sheet set.json --headless --soak 2h --accept floating-supply,above-60,tape-out",
      "  firstamp watch --port /dev/ttyUSB0 --sheet set.json --headless --steps --supply /dev/ttyUSB1 --accept floating-supply,above-60,tape-out",
      "  firstamp watch --port /dev/ttyUSB0 --sheet set.json --observe       watch only, the switch stays open",
    })
public final class WatchCommand implements Callable<Integer> {
  private final Speech speech;

  WatchCommand(Speech speech) {
    this.speech = speech;
  }

  @Mixin private RunOptions run;

  @Option(
      names = "--port",
      required = true,
      paramLabel = "PORT",
      description = "serial port of the probe box, see `firstamp ports`")
  private String port;

  @Option(
      names = "--sheet",
      required = true,
      paramLabel = "FILE",
      description = "job sheet of the set (JSON)")
  private Path sheet;

  @Option(
      names = "--accept",
      paramLabel = "LIST",
      split = ",",
      description = {
        "answers yes to the questions of a headless run, for this run only:",
        "floating-supply (no path round the switch), above-60 (no point clipped to can pass 60 V),"
            + " no-fuse (continue without),",
        "tape-out (recorders: the owner's tape is out, RECORD erases)"
      })
  private List<String> accept = new ArrayList<>();

  @Mixin private AgainOptions again;

  @Option(
      names = "--observe",
      description = "watch only: times count from the first reading above 10 %% of nominal")
  private boolean observe;

  @Option(
      names = "--supply",
      paramLabel = "PORT",
      description = {
        "port of a bench supply that takes standard commands (SCPI), 9600 baud or PORT@BAUD: set to the sheet's volts and limit,",
        "its output on before the switch and off with it; headless only"
      })
  private String supply;

  @Option(
      names = "--reduced",
      description = "the reduced stream at 250 000 baud: no tone or hum figures")
  private boolean reduced;

  @Spec private CommandSpec spec;

  @Override
  public Integer call() throws CliFailure {
    if (run.headless && run.forMicros == null && run.soakMicros == null && !run.steps) {
      throw new UsageProblem(spec.commandLine(), Said.of("watch.headless-needs-for-time-for"));
    }
    run.refuseWhatTheWindowLeavesOut(spec);
    if (run.pedal == PedalJob.HOLD_TO_RUN && run.headless) {
      throw new CliFailure(ExitCode.REFUSED, Said.of("watch.pedal-hold-this-probe-box"));
    }
    if (supply != null && !run.headless) {
      throw new UsageProblem(spec.commandLine(), Said.of("watch.supply-needs-headless"));
    }
    again.check(spec, run.steps);
    checkAccepted();
    if (!run.headless) {
      ThisBench.prepare(run.log, run.look);
    }
    Sheets.Ready whole = run.fitted(Sheets.read(sheet));
    Sheets.warn(whole, speech);
    ProbeEvent.SwitchedOnAgain answer = again.answer(whole.effective());
    Sheets.Ready said = again.fitted(whole);
    lookForPort();
    List<String> questions = observe ? List.of() : Questions.about(said.effective());
    if (run.headless) {
      checkAnswers(questions);
    }
    TriedWire tried = Trials.of(said.effective(), run);
    BenchLog log = Logs.openForWriting(run.log, speech);
    again.refuse(log, whole.effective(), TimeSource.system().epochMillis());
    Sheets.Ready ready = Trials.tightened(said, tried, log, speech);
    ArmGate gate =
        run.headless
            ? ArmGate.answered(questions, TimeSource.system().epochMillis())
            : gate(log, ready, run.soakMicros != null);
    if (answer != null) {
      gate.again(answer);
    }
    RunSetup setup =
        new RunSetup(
                ready.effective(),
                new ProbeSettings(RunOptions.forProbe(run.steps, ready.effective())),
                Trials.label(run, tried),
                !reduced,
                run.forMicros,
                again.restore,
                observe,
                LiveSetup.quietMicros(run.countdown, 3),
                true,
                gate)
            .trying(tried);
    PortOpener opener =
        () ->
            SerialProbePort.open(
                port,
                reduced ? SerialProbePort.BAUD_REDUCED : SerialProbePort.BAUD_RAW,
                ThisBench.lockFolder(),
                TimeSource.system());
    BenchSupply bench = supply == null ? null : SupplyPort.open(supply, ThisBench.lockFolder());
    return LiveSetup.run(run, setup, ready.texts(), opener, log, false, port, bench);
  }

  /** Before anything is asked: nobody goes to look at a bench for a box that is not there. */
  private void lookForPort() throws CliFailure {
    try {
      SerialPorts.check(port);
    } catch (PortException absent) {
      throw new CliFailure(ExitCode.NO_PORT, absent.words(), absent);
    }
  }

  /** In the window the cautions come first; where the switch is never closed nothing is asked. */
  private ArmGate gate(BenchLog log, Sheets.Ready ready, boolean soak) throws CliFailure {
    if (observe) {
      return ArmGate.alwaysOpen();
    }
    try {
      Asking asking =
          Asking.about(
              AnswerBook.in(log.file().toAbsolutePath().getParent(), TimeSource.system()),
              Cautions.question(log, ready.effective().set().name()),
              ready.effective(),
              run.label,
              port);
      return new ArmGate(asking, soak ? List.of("soak") : List.of());
    } catch (LogException failed) {
      throw Logs.failure(failed);
    }
  }

  /** A mistyped answer would only bring its question back. */
  private void checkAccepted() {
    for (String answer : accept) {
      if (!Questions.ANSWERS.contains(answer)) {
        throw new UsageProblem(
            spec.commandLine(), UsageWords.noAnswer("--accept", answer, Questions.ANSWERS));
      }
    }
  }

  private void checkAnswers(List<String> questions) throws CliFailure {
    Worded open = null;
    for (String question : questions) {
      if (!accept.contains(question)) {
        Object before = open == null ? "" : open;
        open = Said.of("watch.question", before, question, Questions.words(question));
      }
    }
    if (open != null) {
      throw new CliFailure(
          ExitCode.REFUSED, Said.of("watch.these-questions-are-not-answered", open));
    }
  }
}
