package firstamp.cli.command;

import firstamp.cli.output.CliFailure;
import firstamp.cli.output.ExitCode;
import firstamp.cli.output.Logs;
import firstamp.cli.output.OutputFile;
import firstamp.cli.output.PowerUpFiles;
import firstamp.cli.output.Progress;
import firstamp.cli.output.Said;
import firstamp.cli.output.Speech;
import firstamp.cli.run.LiveSetup;
import firstamp.log.BenchLog;
import firstamp.log.PowerUpReader;
import firstamp.model.TimeSource;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** One power-up into a file of its own. */
@Command(
    name = "export",
    description =
        "Writes one power-up into a file of its own: whole (firstamp), or its readings (10 ms) as CSV or JSON.",
    footerHeading = "%nExamples:%n",
    footer = {
      "  firstamp export last --to first-try.firstamp",
      "  firstamp export 12 --format csv --to 12.csv      numbers only; time counts from switching on",
      "  firstamp replay last --log first-try.firstamp    such a file is a bench log of one power-up",
    })
public final class ExportCommand implements Callable<Integer> {
  private final Speech speech;

  ExportCommand(Speech speech) {
    this.speech = speech;
  }

  /** Kinds of files. */
  enum Format {
    firstamp,
    csv,
    json
  }

  @Parameters(paramLabel = "ID", description = "number, uuid or last")
  private String id;

  @Option(
      names = "--to",
      paramLabel = "FILE",
      required = true,
      description = "file to make; - = standard output")
  private Path to;

  @Option(
      names = "--format",
      paramLabel = "FORMAT",
      defaultValue = "firstamp",
      description = "${COMPLETION-CANDIDATES} (default ${DEFAULT-VALUE})")
  private Format format;

  @Option(names = "--log", paramLabel = "FILE", description = "bench log to read")
  private Path file;

  @Option(names = "--force", description = "replace a file that is there already")
  private boolean force;

  @Override
  public Integer call() throws CliFailure {
    BenchLog log = Logs.openForReading(file);
    try {
      PowerUpReader reader = Logs.find(log, id);
      Progress progress =
          new Progress(Said.of("export.readings"), TimeSource.system(), System.err, speech);
      OutputFile.write(
          to,
          force,
          aside -> {
            switch (format) {
              case csv -> PowerUpFiles.csv(reader, aside, progress);
              case json -> PowerUpFiles.json(reader, aside, progress);
              default -> log.exportTo(List.of(reader.entry().number()), aside);
            }
          });
      OutputFile.sayDone(Said.of("power-up", reader.entry().number()), to, speech);
      return ExitCode.NORMAL;
    } finally {
      LiveSetup.closeLog(log, speech);
    }
  }
}
