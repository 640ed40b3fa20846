package firstamp.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import firstamp.log.BenchLog;
import firstamp.model.TimeSource;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
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
    assertThat(JsonSchemas.against(replayed)).isEmpty();
    assertThat(replayed.remove("replay").asBoolean()).isTrue();
    if (name.equals("lost-head")) {
      // Nobody had said that the set records.
      assertThat(replayed.at("/alarms/0/text").asText()).endsWith(" Or is it playing?");
    }
    // Made with these rules: figures, times and sentences come out the same.
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

  /** No folder of the computer that made them; none at all, as in the summaries of the papers. */
  @Test
  void noLogKeepsAPathOfTheComputerThatMadeIt() throws Exception {
    int logs = 0;
    for (Path file : files()) {
      if (!file.toString().endsWith(".firstamp")) {
        continue;
      }
      logs++;
      String bytes = Files.readString(file, java.nio.charset.StandardCharsets.ISO_8859_1);
      assertThat(bytes)
          .as(file.toString())
          .doesNotContain("firstamp-sample", "/tmp/", "/home/", "/root/", "/Users/");
      JsonNode stored =
          CommandRunner.run("show", "last", "--json", "--log", file.toString()).summary();
      assertThat(stored.at("/log/file").asText()).as(file.toString()).matches("[a-z-]+[.]db");
    }
    assertThat(logs).isEqualTo(8);
  }

  /**
   * Every log in the tree, also those that the tests keep: none holds the beginning of a folder's
   * path.
   */
  @Test
  void noLogInTheTreeHoldsAnAbsolutePath() throws Exception {
    List<Path> logs = new ArrayList<>();
    for (Path root : List.of(FOLDER, Path.of("src", "test", "resources"))) {
      try (Stream<Path> all = Files.walk(root)) {
        all.filter(file -> file.toString().matches(".*[.](firstamp|db|sqlite)")).forEach(logs::add);
      }
    }
    assertThat(logs).hasSizeGreaterThanOrEqualTo(11);
    for (Path file : logs) {
      String bytes = Files.readString(file, java.nio.charset.StandardCharsets.ISO_8859_1);
      assertThat(bytes)
          .as(file.toString())
          .doesNotContain("/tmp/", "/home/", "/root/", "/Users/")
          .doesNotContainPattern("\"(/|[A-Za-z]:\\\\)[A-Za-z0-9._-]+[/\\\\][^\"]*\"");
    }
  }
}
