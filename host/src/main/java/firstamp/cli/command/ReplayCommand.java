package firstamp.cli.command;

import firstamp.account.FigureList;
import firstamp.cli.output.CliFailure;
import firstamp.cli.output.ExitCode;
import firstamp.cli.output.JsonLines;
import firstamp.cli.output.JsonRunOutput;
import firstamp.cli.output.Logs;
import firstamp.cli.output.RunOutput;
import firstamp.cli.output.Said;
import firstamp.cli.output.Speech;
import firstamp.cli.output.TextRunOutput;
import firstamp.cli.output.UsageProblem;
import firstamp.cli.run.HeadlessRun;
import firstamp.cli.run.LiveSetup;
import firstamp.cli.run.LookOptions;
import firstamp.cli.run.Sheets;
import firstamp.cli.run.ThisBench;
import firstamp.cli.run.WindowRun;
import firstamp.log.BenchLog;
import firstamp.log.LogException;
import firstamp.log.PowerUpHeader;
import firstamp.log.PowerUpReader;
import firstamp.model.JobSheet;
import firstamp.model.Summary;
import firstamp.model.TimeSource;
import firstamp.pipeline.RunRefused;
import firstamp.study.OtherRules;
import firstamp.study.ReplayPace;
import firstamp.study.ReplayPowerUp;
import firstamp.study.WhatIfReport;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** A logged power-up through the same chain again. */
@Command(
    name = "replay",
    description =
        "Replays a logged power-up through the same rules and analysis; it is not logged again.",
    footerHeading = "%nExamples:%n",
    footer = {
      "  firstamp replay last",
      "  firstamp replay 12 --beside 9",
      "  firstamp replay 12 --headless --json --speed max",
      "  firstamp replay 12 --headless --speed max --sheet tighter.json     what would other limits"
          + " have done?",
    })
public final class ReplayCommand implements Callable<Integer> {
  private final Speech speech;

  ReplayCommand(Speech speech) {
    this.speech = speech;
  }

  @Parameters(paramLabel = "ID", description = "number, uuid or last")
  private String id;

  @Option(names = "--log", paramLabel = "FILE", description = "bench log to read")
  private Path file;

  @Option(
      names = "--sheet",
      paramLabel = "FILE",
      description = "another job sheet instead of the stored one")
  private Path sheet;

  @Option(
      names = "--speed",
      paramLabel = "N",
      defaultValue = "1",
      description = "0.1 to 1000, or max (default ${DEFAULT-VALUE})")
  private String speed;

  @Option(
      names = "--beside",
      paramLabel = "ID",
      description = "another power-up drawn behind it, both aligned at switch-on (window only)")
  private String beside;

  @Option(names = "--headless", description = "no window: lines on standard output")
  private boolean headless;

  @Option(names = "--json", description = "one JSON object per line (with --headless)")
  private boolean json;

  @Option(names = "--readings", description = "print every reading (10 ms) too")
  private boolean readings;

  @Mixin private LookOptions look;

  @Spec private CommandSpec spec;

  @Override
  public Integer call() throws CliFailure {
    double factor = factor();
    if (!headless) {
      ThisBench.prepare(file, look);
    }
    BenchLog log = Logs.openForReading(file);
    try {
      PowerUpReader reader = Logs.find(log, id);
      PowerUpHeader header = reader.header();
      JobSheet effective =
          sheet != null
              ? Sheets.read(sheet).effective()
              : Sheets.parse("stored sheet of power-up " + id, header.effectiveSheetJson())
                  .effective();
      if (!headless) {
        return window(log, reader, effective, factor);
      }
      return headless(reader, effective, factor);
    } catch (LogException failed) {
      throw Logs.failure(failed);
    } finally {
      LiveSetup.closeLog(log, speech);
    }
  }

  /** In the window another sheet is set beside what happened, it does not take its place. */
  private int window(BenchLog log, PowerUpReader reader, JobSheet effective, double factor)
      throws CliFailure, LogException {
    PowerUpReader other = beside == null ? null : Logs.find(log, beside);
    if (sheet == null) {
      return WindowRun.replay(reader, effective, factor, log.file().toString(), other, null, look);
    }
    JobSheet stored =
        Sheets.parse("stored sheet of power-up " + id, reader.header().effectiveSheetJson())
            .effective();
    return WindowRun.replay(reader, stored, factor, log.file().toString(), other, effective, look);
  }

  private int headless(PowerUpReader reader, JobSheet effective, double factor)
      throws LogException, CliFailure {
    RunOutput output =
        json
            ? new JsonRunOutput(new JsonLines(System.out), readings)
            : new TextRunOutput(speech, System.out, System.err, readings, false, effective);
    PowerUpHeader header = reader.header();
    output.started(
        (int) reader.entry().number(),
        header.uuid(),
        effective.set().name(),
        header.hello(),
        false);
    ReplayPace pace = new ReplayPace(TimeSource.system(), factor);
    ReplayPowerUp replay =
        sheet == null ? new ReplayPowerUp(reader, effective, output, pace) : null;
    Summary summary = replay != null ? replay.run() : whatIf(reader, effective, output, pace);
    OtherRules rules = sheet == null ? OtherRules.of(reader.entry(), summary) : null;
    if (rules != null) {
      output.otherRules(rules);
    }
    output.summary(summary, replay == null ? FigureList.of(summary) : replay.figures());
    return HeadlessRun.exitCode(summary);
  }

  /** What the other sheet would have found, beside what was found. */
  private Summary whatIf(PowerUpReader reader, JobSheet other, RunOutput output, ReplayPace pace)
      throws LogException, CliFailure {
    try {
      Summary would = ReplayPowerUp.whatIf(reader, other, output, pace).run();
      output.beside(sheet.toString(), WhatIfReport.of(reader, would));
      if (reader.header().stream() != PowerUpHeader.Stream.RAW) {
        speech.note(Said.of("replay.this-power-up-holds-readings"));
      }
      return would;
    } catch (RunRefused unfit) {
      throw new CliFailure(ExitCode.BAD_DATA, unfit.words(), unfit);
    }
  }

  private double factor() {
    if (speed.equals("max")) {
      return Double.POSITIVE_INFINITY;
    }
    try {
      double factor = Double.parseDouble(speed);
      if (factor >= 0.1 && factor <= 1000) {
        return factor;
      }
    } catch (NumberFormatException noNumber) {
      throw new UsageProblem(
          spec.commandLine(), Said.of("replay.speed-expected-0-1-to", speed), noNumber);
    }
    throw new UsageProblem(spec.commandLine(), Said.of("replay.speed-expected-0-1-to", speed));
  }
}
