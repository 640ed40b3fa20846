package firstamp.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.offset;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Power-ups of older rules: 2 from before the forced base was in the plus-minus of currents, 3 from
 * before every set was watched for a current that climbs.
 */
class OlderRulesTest {
  private static final Path OLDER =
      Path.of("src", "test", "resources", "firstamp", "log", "rules-2.firstamp");

  /** As it was stored then. */
  private static final double STORED_PLUS_MINUS_A = 0.0021096534417836877;

  @TempDir Path folder;
  private String log;

  @BeforeEach
  void copy() throws Exception {
    Path here = folder.resolve("older.firstamp");
    Files.copy(OLDER, here);
    log = here.toString();
  }

  @Test
  void showsWhatWasStoredAndReplaySaysWhatComesOutDifferently() {
    JsonNode stored = CommandRunner.run("show", "last", "--json", "--log", log).summary();
    assertThat(stored.at("/supply/steadyAPlusMinus").asDouble()).isEqualTo(STORED_PLUS_MINUS_A);
    JsonNode replayed =
        CommandRunner.run("replay", "last", "--headless", "--json", "--speed", "max", "--log", log)
            .summary();
    assertThat(replayed.at("/rules/stored").asInt()).isEqualTo(2);
    assertThat(replayed.at("/rules/now").asInt()).isEqualTo(4);
    assertThat(replayed.path("changed")).extracting(JsonNode::asText).contains("supply");
    // The steady current is the same, and one line of the budget more: 0.35 mA as a limit, k = 2.
    assertThat(replayed.at("/supply/steadyA")).isEqualTo(stored.at("/supply/steadyA"));
    double now = replayed.at("/supply/steadyAPlusMinus").asDouble();
    double line = 2 * 0.35e-3 / Math.sqrt(3);
    assertThat(now).isCloseTo(Math.hypot(STORED_PLUS_MINUS_A, line), offset(2e-6));
    JsonNode after = CommandRunner.run("show", "last", "--json", "--log", log).summary();
    assertThat(after).isEqualTo(stored);
  }

  @Test
  void aSetOfRulesThreeWasNotWatchedForAClimbUnlessItsSheetAskedForIt() throws Exception {
    Path here = folder.resolve("three.firstamp");
    Files.copy(OLDER.resolveSibling("rules-3.firstamp"), here);
    JsonNode stored =
        CommandRunner.run("show", "last", "--json", "--log", here.toString()).summary();
    JsonNode replayed =
        CommandRunner.run(
                "replay",
                "last",
                "--headless",
                "--json",
                "--speed",
                "max",
                "--log",
                here.toString())
            .summary();
    assertThat(replayed.at("/rules/stored").asInt()).isEqualTo(3);
    assertThat(stored.at("/notWatched").toString()).contains("overAPerMin is not on the sheet");
    assertThat(replayed.path("changed")).extracting(JsonNode::asText).containsExactly("notWatched");
    assertThat(replayed.at("/notWatched").toString())
        .contains("{\"what\":\"current-creep\",\"why\":\"the set was not on long enough\"}");
    assertThat(replayed.at("/alarms")).isEqualTo(stored.at("/alarms"));
  }
}
