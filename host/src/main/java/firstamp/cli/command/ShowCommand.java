package firstamp.cli.command;

import firstamp.analysis.figures.Evidence;
import firstamp.cli.output.CliFailure;
import firstamp.cli.output.EndOfRun;
import firstamp.cli.output.ExitCode;
import firstamp.cli.output.JsonLines;
import firstamp.cli.output.Logs;
import firstamp.cli.output.Said;
import firstamp.cli.output.Speech;
import firstamp.cli.output.Studies;
import firstamp.cli.output.SummaryText;
import firstamp.cli.run.LiveSetup;
import firstamp.log.BenchLog;
import firstamp.log.PowerUpReader;
import firstamp.pipeline.SummaryJson;
import firstamp.study.PowerUpStudy;
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
    footer = {
      "  firstamp show last",
      "  firstamp show 12 --json",
      "  firstamp show last --language de"
    })
public final class ShowCommand implements Callable<Integer> {
  private final Speech speech;

  ShowCommand(Speech speech) {
    this.speech = speech;
  }

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
        speech.note(Said.of("main.wrong", speech.say("cut-short", id)));
      }
      PowerUpStudy study = Studies.read(log, id);
      if (json) {
        new JsonLines(System.out).print(SummaryJson.of(study.summary()));
      } else {
        SummaryText.lines(study.summary(), study.figures(), study.sheet(), speech)
            .forEach(System.out::println);
        marks(study, speech);
        speech.told().lines(study.told()).forEach(line -> speech.out(Said.of("indented", line)));
        System.out.println(speech.say("verdict"));
        EndOfRun.verdict(study, speech, System.out);
      }
      return ExitCode.NORMAL;
    } finally {
      LiveSetup.closeLog(log, speech);
    }
  }

  /** The numbers by which compare takes what lies between changes. */
  private static void marks(PowerUpStudy study, Speech speech) {
    for (Evidence.Stretch stretch : study.evidence().stretches()) {
      if (stretch.number() > 0) {
        String at = speech.figures().value(stretch.fromMs(), "ms");
        System.out.println(
            stretch.mark() == null
                ? speech.say("change", stretch.number(), at)
                : speech.say("change.mark", stretch.number(), at, stretch.mark()));
      }
    }
  }
}
