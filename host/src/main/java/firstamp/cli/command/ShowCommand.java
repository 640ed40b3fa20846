package firstamp.cli.command;

import firstamp.analysis.figures.Evidence;
import firstamp.analysis.figures.FigureText;
import firstamp.cli.output.CliFailure;
import firstamp.cli.output.EndOfRun;
import firstamp.cli.output.ExitCode;
import firstamp.cli.output.JsonLines;
import firstamp.cli.output.Logs;
import firstamp.cli.output.Studies;
import firstamp.cli.output.SummaryText;
import firstamp.cli.run.LiveSetup;
import firstamp.log.BenchLog;
import firstamp.log.PowerUpReader;
import firstamp.pipeline.SummaryJson;
import firstamp.study.PowerUpStudy;
import firstamp.study.ToldWords;
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
public final class ShowCommand implements Callable<Integer> {
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
                + " was stopped early; its figures are worked out from what is there");
      }
      PowerUpStudy study = Studies.read(log, id);
      if (json) {
        new JsonLines(System.out).print(SummaryJson.of(study.summary()));
      } else {
        SummaryText.lines(study.summary(), study.figures()).forEach(System.out::println);
        marks(study);
        new ToldWords().lines(study.told()).forEach(line -> System.out.println("  " + line));
        System.out.println("What it showed:");
        EndOfRun.verdict(study.verdict(), System.out);
      }
      return ExitCode.NORMAL;
    } finally {
      LiveSetup.closeLog(log);
    }
  }

  /** The numbers by which compare takes what lies between changes. */
  private static void marks(PowerUpStudy study) {
    for (Evidence.Stretch stretch : study.evidence().stretches()) {
      if (stretch.number() > 0) {
        System.out.println(
            "  change #"
                + stretch.number()
                + " at "
                + FigureText.millis(stretch.fromMs())
                + (stretch.mark() == null ? "" : ": " + stretch.mark()));
      }
    }
  }
}
