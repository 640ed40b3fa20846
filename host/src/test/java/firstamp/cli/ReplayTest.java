package firstamp.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ReplayTest {
  @TempDir Path folder;

  private JsonNode record(String scenario, Path log) {
    return CommandRunner.run(
            "demo",
            "--headless",
            "--json",
            "--speed",
            "max",
            "--for",
            "3s",
            "--scenario",
            scenario,
            "--log",
            log.toString())
        .summary();
  }

  private static CommandRunner.Result replay(Path log, String... more) {
    String[] arguments = new String[8 + more.length];
    String[] fixed = {
      "replay", "last", "--headless", "--json", "--speed", "max", "--log", log.toString()
    };
    System.arraycopy(fixed, 0, arguments, 0, fixed.length);
    System.arraycopy(more, 0, arguments, fixed.length, more.length);
    return CommandRunner.run(arguments);
  }

  @ParameterizedTest
  @ValueSource(strings = {"healthy", "wire-short", "lost-head", "no-draw", "look-short"})
  void summaryOfTheReplayIsTheStoredOne(String scenario) {
    Path log = folder.resolve("log.db");
    JsonNode live = record(scenario, log);
    JsonNode shown = CommandRunner.run("show", "last", "--json", "--log", log.toString()).summary();
    assertThat(shown).isEqualTo(live);
    ObjectNode replayed = (ObjectNode) replay(log).summary();
    assertThat(replayed.remove("replay").asBoolean()).isTrue();
    assertThat(replayed).isEqualTo(live);
  }

  @Test
  void alarmsComeFromTheStreamAloneAlsoWhenTheirRowsAreGone() throws Exception {
    Path log = folder.resolve("log.db");
    JsonNode live = record("wire-short", log);
    Path copy = folder.resolve("copy.db");
    Files.copy(log, copy);
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + copy);
        Statement statement = connection.createStatement()) {
      statement.executeUpdate("DELETE FROM alarm");
      statement.executeUpdate("UPDATE power_up SET summary = NULL, outcome = NULL, ended = NULL");
    }
    CommandRunner.Result again = replay(copy);
    assertThat(again.summary().path("alarms")).isEqualTo(live.path("alarms"));
    assertThat(live.path("alarms")).isNotEmpty();
  }

  @Test
  void anotherLimitMovesTheTimesAsWorkedOutByHand() throws Exception {
    Path log = folder.resolve("log.db");
    JsonNode live = record("no-draw", log);
    // no-draw: seen from afterMs on, raised when it has held for the on-delay. The stored sheet
    // says 500 ms + 100 ms = 600 ms.
    assertThat(at(live, "no-draw")).isEqualTo(600.0);
    Path other = folder.resolve("other.json");
    Files.writeString(
        other,
        "{\"sheet\":1,\"set\":{\"name\":\"Larch D2 dictation unit (invented)\",\"kind\":\"recorder\",\"chassis\":\"negative\"},"
            + "\"supply\":{\"kind\":\"bench\",\"nominalV\":12,\"fuseA\":1,\"limitA\":1.5},"
            + "\"rules\":{\"no-draw\":{\"belowA\":0.005,\"afterMs\":900,\"onDelayMs\":250}}}");
    // By hand: from 900 ms on, held for 250 ms: 1150 ms.
    assertThat(at(replay(log, "--sheet", other.toString()).summary(), "no-draw")).isEqualTo(1150.0);
  }

  private static double at(JsonNode summary, String rule) {
    for (JsonNode alarm : summary.path("alarms")) {
      if (alarm.path("rule").asText().equals(rule)) {
        return alarm.path("atMs").asDouble();
      }
    }
    throw new AssertionError("no alarm " + rule + " in " + summary);
  }
}
