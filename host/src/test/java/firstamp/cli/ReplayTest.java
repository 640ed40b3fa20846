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
        "{\"sheet\":1,\"set\":{\"name\":\"Larch D2 dictation unit"
            + " (invented)\",\"kind\":\"recorder\",\"chassis\":\"negative\"},"
            + "\"supply\":{\"kind\":\"bench\",\"nominalV\":12,\"fuseA\":1,\"limitA\":1.5},"
            + "\"rules\":{\"no-draw\":{\"belowA\":0.005,\"afterMs\":900,\"onDelayMs\":250}}}");
    // By hand: from 900 ms on, held for 250 ms: 1150 ms.
    assertThat(at(replay(log, "--sheet", other.toString()).summary(), "no-draw")).isEqualTo(1150.0);
  }

  /** A limit of 0.5 A, worked out by hand: the surge lets it pass for 60 ms, the wire does not. */
  @Test
  void anotherSheetSaysWhatWouldHaveBeenFoundBesideWhatWas() throws Exception {
    Path log = folder.resolve("log.db");
    record("wire-short", log);
    Path other = folder.resolve("other.json");
    Files.writeString(
        other,
        "{\"sheet\":1,\"set\":{\"name\":\"Larch D2 dictation unit (invented)\"},"
            + "\"supply\":{\"kind\":\"bench\",\"nominalV\":12,\"fuseA\":2.5,\"limitA\":2.5},"
            + "\"limits\":{\"inrushA\":2.4,\"inrushMs\":20,\"runningA\":0.5},"
            + "\"rails\":[{\"input\":1,\"name\":\"B1\",\"nominalV\":7.5,\"tolerancePercent\":5,"
            + "\"settleMs\":400}]}");
    CommandRunner.Result result = replay(log, "--sheet", other.toString());
    for (JsonNode line : result.json()) {
      assertThat(JsonSchemas.against(line)).as("schema of %s", line).isEmpty();
    }
    JsonNode current = beside(result, "over-current");
    // Then: the wire at 1200 ms by a clock that is right, the resonator within 0.5 %. With 0.5 A
    // the motor's start (12 V over 20 ohm) trips it at once
    // after the 20 ms of surge: three conversions in a row, the third 0.5 ms after the first.
    assertThat(current.path("thenAtMs").asDouble()).isBetween(1200.0 * 0.995, 1201.0 * 1.005);
    assertThat(current.path("wouldAtMs").asDouble()).isBetween(20.4, 21.0);
    assertThat(current.path("tripCause").asText()).isEqualTo("running");
    // It was off then: what its rails did later could not have come.
    assertThat(result.json("beside"))
        .noneMatch(line -> line.path("rule").asText().startsWith("rail"));
    assertThat(result.summary().path("outcome").asText()).isEqualTo("tripped");
    assertThat(result.summary().path("onMs").asDouble()).isBetween(20.4, 21.0);
    assertThat(beside(result, "short").path("thenAtMs").asDouble())
        .isBetween(1200.0 * 0.995, 1201.0 * 1.005);
    CommandRunner.Result text =
        CommandRunner.run(
            "replay",
            "last",
            "--headless",
            "--speed",
            "max",
            "--log",
            log.toString(),
            "--sheet",
            other.toString());
    assertThat(String.join("\n", text.out())).contains("it would have switched itself off");
    assertThat(replay(log).json("beside")).isEmpty();
  }

  /** A window of B1 that the set is out of: from 400 ms on, held for 100 ms. */
  @Test
  void anotherSheetThatDoesNotSwitchOffSaysItsAlarms() throws Exception {
    Path log = folder.resolve("log.db");
    record("healthy", log);
    Path other = folder.resolve("other.json");
    Files.writeString(
        other,
        "{\"sheet\":1,\"set\":{\"name\":\"Larch D2 dictation unit (invented)\"},"
            + "\"supply\":{\"kind\":\"bench\",\"nominalV\":12,\"fuseA\":2.5,\"limitA\":2.5},"
            + "\"rails\":[{\"input\":1,\"name\":\"B1\",\"nominalV\":7.5,\"tolerancePercent\":5,"
            + "\"settleMs\":400}]}");
    CommandRunner.Result result = replay(log, "--sheet", other.toString());
    assertThat(beside(result, "rail-window").has("thenAtMs")).isFalse();
    assertThat(beside(result, "rail-window").path("wouldAtMs").asDouble()).isEqualTo(500.0);
    assertThat(result.summary().path("outcome").asText()).isEqualTo("alarm");
  }

  private static JsonNode beside(CommandRunner.Result result, String rule) {
    return result.json("beside").stream()
        .filter(line -> line.path("rule").asText().equals(rule))
        .findFirst()
        .orElseThrow(() -> new AssertionError("no " + rule + " in " + result.out()));
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
