package firstamp.cli.command;

import firstamp.analysis.calibrate.CalibrationLine;
import firstamp.analysis.calibrate.CalibrationRefused;
import firstamp.analysis.calibrate.MeterAccuracy;
import firstamp.cli.output.CalibrationText;
import firstamp.cli.output.CliFailure;
import firstamp.cli.output.ExitCode;
import firstamp.cli.output.FirstBoxText;
import firstamp.cli.output.Logs;
import firstamp.cli.output.Prompt;
import firstamp.cli.output.Said;
import firstamp.cli.output.Speech;
import firstamp.cli.output.UsageProblem;
import firstamp.cli.run.HeadlessRun;
import firstamp.cli.run.LiveSetup;
import firstamp.cli.run.ThisBench;
import firstamp.emulate.CalibrationDemo;
import firstamp.emulate.ProbeOptions;
import firstamp.emulate.box.Box;
import firstamp.emulate.box.BoxKind;
import firstamp.emulate.line.Pace;
import firstamp.link.SerialProbePort;
import firstamp.log.BenchLog;
import firstamp.log.LogException;
import firstamp.model.ProbePort;
import firstamp.model.TimeSource;
import firstamp.model.samples.Calibration;
import firstamp.model.samples.Channel;
import firstamp.model.text.Explained;
import firstamp.pipeline.RunRefused;
import firstamp.run.calibration.CalibrationProcedure;
import firstamp.run.calibration.ResistorTrial;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Calibrates the probe with simple means, and tests that it switches off. */
@Command(
    name = "calibrate",
    description = {
      "Calibrates the probe box with simple means: clips together, a battery, a resistor, your meter.",
      "Move the clips with the supply off: switch off, clip on, hands out, switch on. A clip that slips"
          + " on a live terminal can short it; hold only its insulated part.",
      "No set on the clips meanwhile. Without it the box works with nominal values, every figure \u00b15 %%.",
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  firstamp calibrate --port /dev/ttyUSB0                            the three steps",
      "  firstamp calibrate --port /dev/ttyUSB0 --steps zero,volts --at R1=1.552 --meter-volts-percent 0.5",
      "  firstamp calibrate --port /dev/ttyUSB0 --show                     what the box keeps",
      "  firstamp calibrate --port /dev/ttyUSB0 --try-the-cut              trip test: resistor on the set terminals",
      "  firstamp calibrate --emulated --yes                               the same on the practice box",
      "  firstamp calibrate --emulated --yes --first-box --json            what is measured on a new box",
    })
public final class CalibrateCommand implements Callable<Integer> {
  private final Speech speech;

  CalibrateCommand(Speech speech) {
    this.speech = speech;
    this.prompt = new Prompt(speech);
  }

  @Option(names = "--port", paramLabel = "PORT", description = "serial port of the probe box")
  private String port;

  @Option(names = "--emulated", description = "a practice box instead, new and as its parts allow")
  private boolean emulated;

  @Option(names = "--show", description = "print what the box keeps, change nothing")
  private boolean show;

  @Option(
      names = "--try-the-cut",
      description =
          "trip test: 10 ohm (10 W) on the set terminals, a limit under its current; tests that it switches off")
  private boolean tryTheCut;

  @Option(
      names = "--steps",
      paramLabel = "LIST",
      split = ",",
      defaultValue = "zero,volts,current",
      description =
          "which of zero, volts, current, levels (default ${DEFAULT-VALUE}); levels: meter and head by a"
              + " 1.5 V cell and two resistors")
  private List<String> steps = new ArrayList<>();

  @Option(
      names = "--at",
      paramLabel = "CHANNEL=VALUE",
      description =
          "a further point: I, J, V, R1, R2, R3, H or M, and what your meter shows, ampere or volt")
  private Map<Channel, Double> at = Map.of();

  @Option(
      names = "--meter-volts-percent",
      paramLabel = "X",
      defaultValue = "0.8",
      description =
          "accuracy of your meter on dc volts, from its data sheet (default ${DEFAULT-VALUE})")
  private double voltsPercent;

  @Option(
      names = "--meter-amps-percent",
      paramLabel = "X",
      defaultValue = "1.5",
      description =
          "accuracy of your meter on dc current, from its data sheet (default ${DEFAULT-VALUE})")
  private double ampsPercent;

  @Option(
      names = "--meter-ohms-percent",
      paramLabel = "X",
      defaultValue = "1",
      description =
          "accuracy of your meter on ohms, from its data sheet (default ${DEFAULT-VALUE})")
  private double ohmsPercent;

  @Option(
      names = "--first-box",
      description =
          "measure a new box and print what it does, write nothing: all four steps, then the trip test")
  private boolean firstBox;

  @Option(
      names = "--seed",
      paramLabel = "N",
      defaultValue = "1",
      description = "which practice box (--emulated); default ${DEFAULT-VALUE}")
  private long seed;

  @Option(names = "--yes", description = "ask nothing: everything is joined as the steps say")
  private boolean yes;

  @Option(names = "--json", description = "one JSON object per line")
  private boolean json;

  @Option(names = "--log", paramLabel = "FILE", description = "bench log")
  private Path log;

  @Spec private CommandSpec spec;

  private final Prompt prompt;
  private final CalibrationProcedure course = new CalibrationProcedure();
  private CalibrationDemo demo;

  @Override
  public Integer call() throws CliFailure {
    check();
    if (emulated) {
      demo = new CalibrationDemo(ProbeOptions.of(seed, Pace.MAX), Box.of(BoxKind.NEW, seed));
    }
    try (course) {
      Calibration before = course.attach(open());
      if (show) {
        new CalibrationText(json, speech).kept(before);
        return ExitCode.NORMAL;
      }
      course.requireOff();
      return tryTheCut ? cut() : calibrate(before);
    } catch (RunRefused refused) {
      throw new CliFailure(HeadlessRun.code(refused), refused.words(), refused);
    } catch (CalibrationRefused refused) {
      throw new CliFailure(
          ExitCode.BAD_DATA, Said.of("calibrate.refused", Explained.of(refused)), refused);
    } catch (IOException failed) {
      throw new CliFailure(ExitCode.NO_PORT, Explained.of(failed), failed);
    }
  }

  private void check() {
    if (emulated == (port != null)) {
      throw new UsageProblem(spec.commandLine(), Said.of("calibrate.give-one-of-port-port"));
    }
    if (!Set.of("zero", "volts", "current", "levels").containsAll(steps)) {
      throw new UsageProblem(
          spec.commandLine(), Said.of("calibrate.steps-expected-some-of-zero", steps));
    }
    if (steps.contains("levels") && !steps.contains("zero")) {
      throw new UsageProblem(spec.commandLine(), Said.of("calibrate.levels-need-zero", steps));
    }
    for (double percent : new double[] {voltsPercent, ampsPercent, ohmsPercent}) {
      if (!(percent > 0 && percent <= 20)) {
        throw new UsageProblem(
            spec.commandLine(), Said.of("calibrate.accuracy-of-the-meter-expected", percent));
      }
    }
    if (yes && !emulated && !tryTheCut && !show) {
      throw new UsageProblem(
          spec.commandLine(), Said.of("calibrate.yes-without-emulated-only-your"));
    }
  }

  private ProbePort open() throws IOException {
    return emulated
        ? demo.port()
        : SerialProbePort.open(
            port, SerialProbePort.BAUD_RAW, ThisBench.lockFolder(), TimeSource.system());
  }

  private CalibrationDialogue dialogue() {
    return new CalibrationDialogue(course, demo, prompt, yes, speech);
  }

  private int cut() throws CliFailure, IOException, RunRefused {
    ResistorTrial.Cut cut = dialogue().tryTheCut();
    new CalibrationText(json, speech).cut(cut);
    return cut.works() ? ExitCode.NORMAL : ExitCode.FINDING;
  }

  private int calibrate(Calibration before)
      throws CliFailure, IOException, RunRefused, CalibrationRefused {
    if (firstBox) {
      steps = List.of("zero", "volts", "current", "levels");
    }
    CalibrationDialogue dialogue = dialogue();
    dialogue.measure(steps, at);
    List<CalibrationLine> lines =
        course.lines(
            new MeterAccuracy(voltsPercent, 0),
            new MeterAccuracy(ampsPercent, 0),
            new MeterAccuracy(ohmsPercent, 0));
    if (firstBox) {
      return new FirstBoxText(json, speech).print(course, lines, dialogue.tryTheCut(), emulated);
    }
    new CalibrationText(json, speech).lines(before, lines);
    if (!yes && !prompt.agrees(Said.of("calibrate.write"))) {
      speech.err(Said.of("calibrate.nothing-was-written"));
      return ExitCode.NORMAL;
    }
    keep(course.write(lines, TimeSource.system().epochMillis() / 1000));
    speech.err(Said.of("calibrate.written-into-the-probe-box"));
    return ExitCode.NORMAL;
  }

  private void keep(Calibration calibration) throws CliFailure {
    BenchLog bench = Logs.openForWriting(emulated ? Logs.demoFile(log) : log, speech);
    try {
      bench.keep(calibration);
      if (emulated) {
        Logs.sayKept(bench, log, speech);
      }
    } catch (LogException failed) {
      throw Logs.failure(failed);
    } finally {
      LiveSetup.closeLog(bench, speech);
    }
  }
}
