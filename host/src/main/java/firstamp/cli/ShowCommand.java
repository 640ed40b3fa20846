package firstamp.cli;

import firstamp.log.BenchLog;
import firstamp.log.LogException;
import firstamp.log.PowerUpHeader;
import firstamp.log.PowerUpReader;
import firstamp.model.JobSheet;
import firstamp.model.Summary;
import firstamp.session.ChainListener;
import firstamp.session.ReplayPowerUp;
import firstamp.session.SummaryJson;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Figures of one logged power-up. */
@Command(
    name = "show",
    description = "Shows the figures of one logged power-up.",
    footerHeading = "%nExamples:%n",
    footer = {"  firstamp show last", "  firstamp show 12 --json"})
final class ShowCommand implements Callable<Integer> {
  @Parameters(paramLabel = "ID", description = "number, uuid or last")
  private String id;

  @Option(names = "--log", paramLabel = "FILE", description = "bench log to read")
  private Path file;

  @Option(names = "--json", description = "the stored summary as one JSON object")
  private boolean json;

  @Override
  public Integer call() throws CliFailure {
    BenchLog log = Logs.openForReading(file);
    try {
      PowerUpReader reader = Logs.find(log, id);
      String stored = reader.entry().summaryJson();
      if (json && stored != null) {
        new JsonLines(System.out).printText(stored);
        return ExitCode.NORMAL;
      }
      if (stored == null) {
        System.err.println(
            "firstamp: power-up "
                + id
                + " was cut short; its figures are worked out from what is there");
      }
      Summary summary = figures(reader);
      if (json) {
        new JsonLines(System.out).print(SummaryJson.of(summary));
      } else {
        SummaryText.lines(summary).forEach(System.out::println);
      }
      return ExitCode.NORMAL;
    } catch (LogException failed) {
      throw Logs.failure(failed);
    } finally {
      LiveSetup.closeLog(log);
    }
  }

  /** The same figures again from the stream: they are the stored ones to the bit. */
  private Summary figures(PowerUpReader reader) throws CliFailure, LogException {
    PowerUpHeader header = reader.header();
    JobSheet effective =
        Sheets.parse("stored sheet of power-up " + id, header.effectiveSheetJson()).effective();
    return new ReplayPowerUp(reader, effective, new ChainListener() {}, micros -> true).run();
  }
}
