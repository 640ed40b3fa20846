package firstamp.cli.command;

import firstamp.cli.output.CliFailure;
import firstamp.cli.output.Speech;
import firstamp.cli.run.LookOptions;
import firstamp.cli.run.ThisBench;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** The window on its first screen: the sets of this bench, and everything that follows. */
@Command(
    name = "bench",
    description = {
      "Opens the window on the bench log: sets, power-ups, a new set, the probe box, the practice set.",
      "The same as firstamp without a command.",
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  firstamp",
      "  firstamp bench --language de --theme dark",
      "  firstamp bench --log other.db",
    })
public final class BenchCommand implements Callable<Integer> {
  private final Speech speech;

  BenchCommand(Speech speech) {
    this.speech = speech;
  }

  @Mixin private LookOptions look;

  @Option(names = "--log", paramLabel = "FILE", description = "bench log")
  private Path log;

  @Override
  public Integer call() throws CliFailure {
    return ThisBench.open(log, look);
  }
}
