package firstamp.cli.command;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import firstamp.analysis.figures.FigureText;
import firstamp.cli.output.CliFailure;
import firstamp.cli.output.ExitCode;
import firstamp.cli.output.JsonLines;
import firstamp.cli.output.Logs;
import firstamp.cli.output.SummaryText;
import firstamp.cli.run.LiveSetup;
import firstamp.log.BenchLog;
import firstamp.log.LogException;
import firstamp.log.PowerUpEntry;
import firstamp.pipeline.SummaryJson;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Lists the power-ups of a bench log. */
@Command(
    name = "list",
    description = "Lists the power-ups in a bench log, oldest first.",
    footerHeading = "%nExamples:%n",
    footer = {"  firstamp list", "  firstamp list --log demo.db --json"})
public final class ListCommand implements Callable<Integer> {
  private static final DateTimeFormatter LOCAL =
      DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm:ss").withZone(ZoneId.systemDefault());

  private static final String LINE = "%4s  %-19s  %8s  %-13s  %10s  %s";
  private static final String HEAD =
      SummaryText.text(LINE, "#", "switched on", "on for", "result", "size", "set, label");

  @Option(names = "--log", paramLabel = "FILE", description = "bench log to read")
  private Path file;

  @Option(names = "--json", description = "one JSON object per line")
  private boolean json;

  @Override
  public Integer call() throws CliFailure {
    if (file == null && !Files.exists(BenchLog.defaultFile())) {
      return none(BenchLog.defaultFile());
    }
    BenchLog log = Logs.openForReading(file);
    try {
      List<PowerUpEntry> entries = log.list();
      if (entries.isEmpty()) {
        return none(log.file());
      }
      if (!json) {
        System.out.println(HEAD);
      }
      JsonLines lines = new JsonLines(System.out);
      for (PowerUpEntry entry : entries) {
        Row row = row(log, entry);
        if (json) {
          lines.print(line(row));
        } else {
          System.out.println(text(row));
        }
      }
      return ExitCode.NORMAL;
    } catch (LogException failed) {
      throw Logs.failure(failed);
    } finally {
      LiveSetup.closeLog(log);
    }
  }

  /** That nothing was logged yet is no error, whether the file is there or not. */
  private static int none(Path log) {
    System.err.println("firstamp: no power-ups yet in " + log);
    return ExitCode.NORMAL;
  }

  /**
   * One power-up.
   *
   * @param onMs how long the switch was closed, null = not known (stopped early) or never
   */
  private record Row(PowerUpEntry entry, Double onMs, long bytes) {}

  private static Row row(BenchLog log, PowerUpEntry entry) throws LogException {
    Double onMs = null;
    if (entry.summaryJson() != null) {
      JsonNode on = SummaryJson.tree(entry.summaryJson()).path("onMs");
      onMs = on.isNumber() ? on.asDouble() : null;
    }
    return new Row(entry, onMs, log.find(entry.uuid()).bytes());
  }

  private static String text(Row row) {
    PowerUpEntry entry = row.entry();
    return SummaryText.text(
        LINE,
        Long.toString(entry.number()),
        LOCAL.format(Instant.ofEpochMilli(entry.startedEpochMs())),
        row.onMs() == null ? "" : FigureText.millis(row.onMs()),
        result(entry),
        SummaryText.text("%.1f kB", row.bytes() / 1000.0),
        entry.setName() + (entry.label() == null ? "" : "  \"" + entry.label() + "\""));
  }

  /** "Normal" is never said: nobody knows what was not watched. */
  private static String result(PowerUpEntry entry) {
    return switch (entry.finished() ? entry.outcome() : "interrupted") {
      case "normal" -> "no fault seen";
      case "interrupted" -> "stopped early";
      case "no-draw" -> "drew nothing";
      default -> entry.outcome();
    };
  }

  private static ObjectNode line(Row row) {
    PowerUpEntry entry = row.entry();
    ObjectNode node = JsonLines.object("powerUp");
    node.put("powerUp", entry.number());
    node.put("uuid", entry.uuid());
    node.put("set", entry.setName());
    node.put("label", entry.label());
    node.put("startedAt", Instant.ofEpochMilli(entry.startedEpochMs()).toString());
    node.put("outcome", entry.finished() ? entry.outcome() : "interrupted");
    node.put("ended", entry.ended());
    node.put("onMs", row.onMs());
    node.put("bytes", row.bytes());
    return node;
  }
}
