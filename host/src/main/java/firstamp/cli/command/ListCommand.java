package firstamp.cli.command;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import firstamp.cli.output.CliFailure;
import firstamp.cli.output.ExitCode;
import firstamp.cli.output.JsonLines;
import firstamp.cli.output.Logs;
import firstamp.cli.output.Said;
import firstamp.cli.output.Speech;
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
    footer = {
      "  firstamp list",
      "  firstamp list --log demo.db --json",
      "  firstamp --language de list"
    })
public final class ListCommand implements Callable<Integer> {
  private final Speech speech;

  ListCommand(Speech speech) {
    this.speech = speech;
  }

  private static final DateTimeFormatter LOCAL =
      DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm:ss").withZone(ZoneId.systemDefault());

  private static final List<String> RESULTS =
      List.of("normal", "interrupted", "no-draw", "alarm", "tripped");

  @Option(names = "--log", paramLabel = "FILE", description = "bench log to read")
  private Path file;

  @Option(names = "--json", description = "one JSON object per line")
  private boolean json;

  @Override
  public Integer call() throws CliFailure {
    if (file == null && !Files.exists(BenchLog.defaultFile())) {
      return none(BenchLog.defaultFile(), speech);
    }
    BenchLog log = Logs.openForReading(file);
    try {
      List<PowerUpEntry> entries = log.list();
      if (entries.isEmpty()) {
        return none(log.file(), speech);
      }
      if (!json) {
        System.out.println(head(speech));
      }
      JsonLines lines = new JsonLines(System.out);
      for (PowerUpEntry entry : entries) {
        Row row = row(log, entry);
        if (json) {
          lines.print(line(row));
        } else {
          System.out.println(text(row, speech));
        }
      }
      return ExitCode.NORMAL;
    } catch (LogException failed) {
      throw Logs.failure(failed);
    } finally {
      LiveSetup.closeLog(log, speech);
    }
  }

  /** That nothing was logged yet is no error, whether the file is there or not. */
  private static int none(Path log, Speech speech) {
    speech.note(Said.of("main.wrong", speech.say("list.none", log)));
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

  /** As wide as the longest result of the language. */
  private static String format(Speech speech) {
    int widest =
        RESULTS.stream()
            .mapToInt(result -> speech.say("result." + result).length())
            .max()
            .orElse(0);
    return "%4s  %-19s  %8s  %-" + widest + "s  %10s  %s";
  }

  private static String head(Speech speech) {
    return SummaryText.text(
        format(speech),
        "#",
        speech.say("list.switched-on"),
        speech.say("list.on-for"),
        speech.say("list.result"),
        speech.say("list.size"),
        speech.say("list.set"));
  }

  private static String text(Row row, Speech speech) {
    PowerUpEntry entry = row.entry();
    return SummaryText.text(
        format(speech),
        Long.toString(entry.number()),
        LOCAL.format(Instant.ofEpochMilli(entry.startedEpochMs())),
        row.onMs() == null ? "" : speech.figures().value(row.onMs(), "ms"),
        // "Normal" is never said: nobody knows what was not watched.
        speech.say("result." + (entry.finished() ? entry.outcome() : "interrupted")),
        speech.number("%.1f kB", row.bytes() / 1000.0),
        entry.setName() + (entry.label() == null ? "" : "  \"" + entry.label() + "\""));
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
