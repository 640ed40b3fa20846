package firstamp.cli;

import com.fasterxml.jackson.databind.node.ObjectNode;
import firstamp.log.BenchLog;
import firstamp.log.LogException;
import firstamp.log.PowerUpEntry;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Lists the power-ups of a bench log. */
@Command(
    name = "list",
    description = "Lists the power-ups in a bench log, oldest first.",
    footerHeading = "%nExamples:%n",
    footer = {"  firstamp list", "  firstamp list --log demo.db --json"})
final class ListCommand implements Callable<Integer> {
  private static final DateTimeFormatter LOCAL =
      DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm:ss").withZone(ZoneId.systemDefault());

  @Option(names = "--log", paramLabel = "FILE", description = "bench log to read")
  private Path file;

  @Option(names = "--json", description = "one JSON object per line")
  private boolean json;

  @Override
  public Integer call() throws CliFailure {
    BenchLog log = Logs.openForReading(file);
    try {
      JsonLines lines = new JsonLines(System.out);
      for (PowerUpEntry entry : log.list()) {
        if (json) {
          lines.print(line(entry));
        } else {
          System.out.println(
              SummaryText.text(
                  "%4d  %s  %-11s  %s%s",
                  entry.number(),
                  LOCAL.format(Instant.ofEpochMilli(entry.startedEpochMs())),
                  entry.finished() ? entry.outcome() : "cut short",
                  entry.setName(),
                  entry.label() == null ? "" : "  \"" + entry.label() + "\""));
        }
      }
      return ExitCode.NORMAL;
    } catch (LogException failed) {
      throw Logs.failure(failed);
    } finally {
      LiveSetup.closeLog(log);
    }
  }

  private static ObjectNode line(PowerUpEntry entry) {
    ObjectNode node = JsonLines.object("powerUp");
    node.put("powerUp", entry.number());
    node.put("uuid", entry.uuid());
    node.put("set", entry.setName());
    node.put("label", entry.label());
    node.put("startedAt", Instant.ofEpochMilli(entry.startedEpochMs()).toString());
    node.put("outcome", entry.finished() ? entry.outcome() : "unfinished");
    node.put("ended", entry.ended());
    return node;
  }
}
