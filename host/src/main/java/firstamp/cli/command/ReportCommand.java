package firstamp.cli.command;

import firstamp.cli.output.CliFailure;
import firstamp.cli.output.ExitCode;
import firstamp.cli.output.Logs;
import firstamp.cli.output.OutputFile;
import firstamp.cli.output.Said;
import firstamp.cli.output.Speech;
import firstamp.cli.output.Studies;
import firstamp.cli.run.LiveSetup;
import firstamp.locate.wire.WireFile;
import firstamp.locate.wire.WireStory;
import firstamp.log.BenchLog;
import firstamp.log.LogException;
import firstamp.log.SetNotes;
import firstamp.model.text.Explained;
import firstamp.report.HtmlReport;
import firstamp.report.ReportInput;
import firstamp.sheet.SheetException;
import firstamp.study.PowerUpStudy;
import firstamp.study.Thinking;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** One self-contained page about a logged power-up. */
@Command(
    name = "report",
    description =
        "Writes one self-contained HTML page about a logged power-up; with a second ID also what changed between the two.",
    footerHeading = "%nExamples:%n",
    footer = {
      "  firstamp report last --to power-up.html",
      "  firstamp report 3 12 --to before-and-after.html",
      "  firstamp report last --wires wires.json --to wire-w3.html",
    })
public final class ReportCommand implements Callable<Integer> {
  private final Speech speech;

  ReportCommand(Speech speech) {
    this.speech = speech;
  }

  @Parameters(
      arity = "1..2",
      paramLabel = "ID",
      description = "number, uuid or last; of two the earlier one first")
  private List<String> ids;

  @Option(
      names = "--to",
      required = true,
      paramLabel = "FILE",
      description = "page to write; - = standard output")
  private Path to;

  @Option(names = "--force", description = "write over a file that is there already")
  private boolean force;

  @Option(
      names = "--wires",
      paramLabel = "FILE",
      description = "what `firstamp trial` keeps: cold checks and trials go into the page")
  private Path wires;

  @Option(names = "--log", paramLabel = "FILE", description = "bench log to read")
  private Path file;

  @Override
  public Integer call() throws CliFailure {
    OutputFile.check(to, force);
    BenchLog log = Logs.openForReading(file);
    try {
      PowerUpStudy now = Studies.read(log, ids.get(ids.size() - 1));
      PowerUpStudy before = ids.size() < 2 ? null : Studies.read(log, ids.get(0));
      String page =
          HtmlReport.page(
              ReportInput.of(now, before, notes(log, now), thoughts(log, now), speech.locale()),
              speech.locale());
      OutputFile.write(to, force, aside -> Files.writeString(aside, page));
      OutputFile.sayDone(Said.of("report.of", Studies.name(now.entry())), to, speech);
      return ExitCode.NORMAL;
    } finally {
      LiveSetup.closeLog(log, speech);
    }
  }

  private static SetNotes notes(BenchLog log, PowerUpStudy study) throws CliFailure {
    try {
      return SetNotes.of(log, study.entry().setName());
    } catch (LogException failed) {
      throw Logs.failure(failed);
    }
  }

  private ReportInput.Thoughts thoughts(BenchLog log, PowerUpStudy study) throws CliFailure {
    try {
      List<String> story =
          wires == null
              ? List.of()
              : WireStory.of(
                  WireFile.read(StateFiles.read(wires, Said.of("state.trial-makes-one"))),
                  ZoneId.systemDefault(),
                  speech.wires());
      return new ReportInput.Thoughts(Thinking.sentences(log, study, speech.locale()), story);
    } catch (IllegalArgumentException bad) {
      throw new CliFailure(ExitCode.BAD_DATA, Said.of("file-said", wires, Explained.of(bad)), bad);
    } catch (LogException failed) {
      throw Logs.failure(failed);
    } catch (SheetException bad) {
      throw new CliFailure(ExitCode.BAD_DATA, Explained.of(bad), bad);
    }
  }
}
