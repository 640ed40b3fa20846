package firstamp.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import firstamp.log.BenchLog;
import firstamp.model.TimeSource;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SampleLogsTest {
  private static final Path FOLDER = Path.of("..", "sample-logs");
  private static final long MOST_BYTES = 15_000_000;

  private static List<Path> files() throws IOException {
    try (Stream<Path> all = Files.list(FOLDER)) {
      return all.sorted().toList();
    }
  }

  @ParameterizedTest
  @CsvSource({
    "healthy, normal, ''",
    "wire-short, tripped, short",
    "look-short, alarm, short",
    "lost-head, alarm, head-below-meter",
    "tired-filter, alarm, ripple",
    "hum, alarm, hum",
    "motor-stall, tripped, over-current",
    "creep, alarm, current-creep",
  })
  void opensPassesEveryCheckAndReplaysToTheStoredSummary(String name, String outcome, String rule)
      throws Exception {
    Path file = FOLDER.resolve(name + ".firstamp");
    BenchLog log = BenchLog.openForReading(file, TimeSource.system());
    assertThat(log.list()).hasSize(1);
    assertThat(log.check()).isEmpty();
    assertThat(log.find("last").header().sheetJson())
        .as("the sheet beside it")
        .isEqualTo(Files.readString(FOLDER.resolve(name + ".json")));
    JsonNode stored =
        CommandRunner.run("show", "last", "--json", "--log", file.toString()).summary();
    assertThat(stored.path("outcome").asText()).isEqualTo(outcome);
    assertThat(stored.path("alarms").findValuesAsText("rule"))
        .satisfies(
            rules -> assertThat(rule.isEmpty() ? rules.isEmpty() : rules.contains(rule)).isTrue());
    ObjectNode replayed =
        (ObjectNode)
            CommandRunner.run(
                    "replay",
                    "last",
                    "--headless",
                    "--json",
                    "--speed",
                    "max",
                    "--log",
                    file.toString())
                .summary();
    assertThat(replayed.remove("replay").asBoolean()).isTrue();
    assertThat(replayed).isEqualTo(stored);
  }

  @Test
  void theFolderIsSmallAndItsPageNamesEveryLog() throws IOException {
    String page = Files.readString(FOLDER.resolve("README.md"));
    long bytes = 0;
    for (Path file : files()) {
      bytes += Files.size(file);
      String name = file.getFileName().toString();
      if (name.endsWith(".firstamp")) {
        assertThat(page).contains("`" + name + "`");
      }
      assertThat(name).as("reading leaves nothing behind").matches(".*\\.(firstamp|json|md|sh)");
    }
    assertThat(bytes).isLessThan(MOST_BYTES);
  }
}
