package firstamp.cli.command;

import firstamp.cli.output.CliFailure;
import firstamp.cli.output.ExitCode;
import firstamp.cli.output.Logs;
import firstamp.cli.output.Said;
import firstamp.cli.output.Speech;
import firstamp.cli.run.LiveSetup;
import firstamp.log.BenchLog;
import firstamp.log.LogException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Power-ups from a file into the bench log. */
@Command(
    name = "import",
    description =
        "Checks a file and imports its power-ups into the bench log. Power-ups already there stay as they are.",
    footerHeading = "%nExamples:%n",
    footer = {"  firstamp import from-a-friend.firstamp"})
public final class ImportCommand implements Callable<Integer> {
  private final Speech speech;

  ImportCommand(Speech speech) {
    this.speech = speech;
  }

  @Parameters(paramLabel = "FILE", description = "a .firstamp file or another bench log")
  private Path source;

  @Option(names = "--log", paramLabel = "FILE", description = "bench log to write to")
  private Path file;

  @Override
  public Integer call() throws CliFailure {
    if (!Files.exists(source)) {
      throw new CliFailure(
          ExitCode.NO_INPUT, Said.of("import.there-is-no-file-check", source.toAbsolutePath()));
    }
    BenchLog log = Logs.openForWriting(file, speech);
    try {
      BenchLog.Imported imported = log.importFrom(source);
      for (long number : imported.numbers()) {
        speech.out(Said.of("import.power-up-taken-from", number, source));
      }
      for (String uuid : imported.skipped()) {
        speech.out(Said.of("import.power-up-is-in-the", uuid));
      }
      return ExitCode.NORMAL;
    } catch (LogException failed) {
      throw Logs.failure(failed);
    } finally {
      LiveSetup.closeLog(log, speech);
    }
  }
}
