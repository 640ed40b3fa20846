package firstamp.cli.command;

import firstamp.cli.output.CliFailure;
import firstamp.cli.output.ExitCode;
import firstamp.cli.output.Logs;
import firstamp.cli.output.OutputFile;
import firstamp.cli.output.Said;
import firstamp.cli.output.Speech;
import firstamp.cli.output.Studies;
import firstamp.cli.run.LiveSetup;
import firstamp.cli.run.Sheets;
import firstamp.log.BenchLog;
import firstamp.model.Summary;
import firstamp.model.text.Numbers;
import firstamp.sheet.SheetLearning;
import firstamp.sheet.SheetWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** What a good power-up can add to a sheet. */
@Command(
    name = "learn",
    description = {
      "Prints what a power-up without findings can add to a job sheet: current, capacitance, rails, level of the head.",
      "Entries already on the sheet stay as they are. Nothing is written without --to.",
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  firstamp sheet learn set.json --from last",
      "  firstamp sheet learn set.json --from 12 --to set2.json",
    })
final class SheetLearnCommand implements Callable<Integer> {
  private final Speech speech;

  SheetLearnCommand(Speech speech) {
    this.speech = speech;
  }

  @Parameters(paramLabel = "FILE", description = "job sheet (JSON)")
  private Path file;

  @Option(
      names = "--from",
      paramLabel = "ID",
      required = true,
      description = "power-up: number, uuid or last")
  private String id;

  @Option(names = "--to", paramLabel = "FILE", description = "write the fuller sheet there")
  private Path to;

  @Option(names = "--force", description = "replace that file if it is there")
  private boolean force;

  @Option(names = "--log", paramLabel = "FILE", description = "bench log to read")
  private Path log;

  @Override
  public Integer call() throws CliFailure {
    Sheets.Ready sheet = Sheets.read(file);
    BenchLog open = Logs.openForReading(log);
    try {
      Summary seen = Studies.read(open, id).summary();
      if (!SheetLearning.fits(seen)) {
        throw new CliFailure(
            ExitCode.BAD_DATA, Said.of("sheet-learn.power-up-ended-with-a", id, seen.outcome()));
      }
      SheetLearning learning = SheetLearning.of(sheet.document().sheet(), seen);
      if (learning.learnt().isEmpty()) {
        speech.out(Said.of("sheet-learn.nothing-new-the-sheet-says"));
      }
      for (SheetLearning.Learnt one : learning.learnt()) {
        speech.out(Said.of("sheet-learn.field", one.field(), Numbers.text(one.value()), one.why()));
      }
      if (to != null) {
        String text = SheetWriter.write(learning.sheet());
        OutputFile.write(to, force, aside -> Files.writeString(aside, text));
        speech.out(Said.of("sheet-learn.is-written", to));
      }
      return ExitCode.NORMAL;
    } finally {
      LiveSetup.closeLog(open, speech);
    }
  }
}
