package firstamp.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import firstamp.cli.output.Logs;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DemoTest {
  @TempDir Path folder;

  private CommandRunner.Result demo(String scenario, String... more) {
    List<String> arguments =
        new ArrayList<>(
            List.of(
                "demo",
                "--headless",
                "--json",
                "--speed",
                "max",
                "--for",
                "5s",
                "--scenario",
                scenario));
    arguments.add("--log");
    arguments.add(folder.resolve(scenario + ".db").toString());
    arguments.addAll(List.of(more));
    CommandRunner.Result result = CommandRunner.run(arguments.toArray(String[]::new));
    for (JsonNode line : result.json()) {
      assertThat(JsonSchemas.against(line)).as("schema of %s", line).isEmpty();
    }
    return result;
  }

  private static List<String> rules(JsonNode summary) {
    List<String> rules = new ArrayList<>();
    summary.path("alarms").forEach(alarm -> rules.add(alarm.path("rule").asText()));
    return rules;
  }

  @Test
  void healthySetRaisesNothingAndEveryConversionIsKept() {
    CommandRunner.Result result = demo("healthy");
    JsonNode summary = result.summary();
    assertThat(result.exitCode()).as(result.err()).isZero();
    assertThat(summary.path("outcome").asText()).isEqualTo("normal");
    assertThat(summary.path("ended").asText()).isEqualTo("time");
    assertThat(rules(summary)).isEmpty();
    assertThat(summary.path("conversions").path("lost").asLong()).isZero();
    assertThat(summary.path("onMs").asDouble()).isBetween(5000.0, 5040.0);
    // The invented set: 8.2 V rail, head 38 dB below the meter on its sheet.
    assertThat(summary.path("rails").path(0).path("finalV").asDouble()).isCloseTo(8.2, within(0.2));
    assertThat(summary.path("levels").path("headBelowMeterDb").asDouble())
        .isCloseTo(38, within(3.0));
  }

  @Test
  void shortedWireTripsAndNamesCauseAndTime() {
    CommandRunner.Result result = demo("wire-short");
    JsonNode summary = result.summary();
    assertThat(result.exitCode()).isEqualTo(3);
    assertThat(summary.path("outcome").asText()).isEqualTo("tripped");
    assertThat(summary.path("ended").asText()).isEqualTo("trip");
    assertThat(summary.path("tripCause").asText()).isEqualTo("running");
    // The lead touches 1200 ms after closing; the probe has under a millisecond, and its resonator
    // is off by up to 0.5 %.
    assertThat(summary.path("tripAtMs").asDouble()).isBetween(1200.0 * 0.995, 1201.0 * 1.005);
    assertThat(rules(summary)).startsWith("over-current");
    assertThat(result.json("trip")).hasSize(1);
    assertThat(result.json("off").get(0).path("by").asText()).isEqualTo("trip");
  }

  @Test
  void thickShortIsHeldAndSaysShort() {
    CommandRunner.Result result = demo("dead-short");
    assertThat(result.exitCode()).isEqualTo(3);
    assertThat(result.summary().path("tripCause").asText()).isEqualTo("running");
    // The limiter holds it; three conversions trip before it has held for a millisecond.
    assertThat(rules(result.summary())).startsWith("over-current").contains("short");
  }

  @Test
  void silentHeadRaisesHeadBelowMeter() {
    CommandRunner.Result result = demo("lost-head");
    assertThat(result.exitCode()).isEqualTo(3);
    assertThat(result.summary().path("outcome").asText()).isEqualTo("alarm");
    assertThat(rules(result.summary())).containsExactly("head-below-meter");
  }

  @Test
  void deadSetIsNoDraw() {
    CommandRunner.Result result = demo("no-draw");
    assertThat(result.exitCode()).isEqualTo(3);
    assertThat(result.summary().path("outcome").asText()).isEqualTo("no-draw");
    assertThat(rules(result.summary())).contains("no-draw");
  }

  @Test
  void shortInTheFirstLookNeverClosesTheSwitchAndNamesTheOhms() {
    CommandRunner.Result result = demo("look-short");
    JsonNode summary = result.summary();
    assertThat(result.exitCode()).isEqualTo(3);
    assertThat(summary.path("ended").asText()).isEqualTo("look");
    assertThat(summary.path("onMs").asDouble()).isZero();
    assertThat(summary.path("look").path("result").asText()).isEqualTo("short");
    assertThat(rules(summary)).contains("short");
    assertThat(result.json("off")).isEmpty();
  }

  @Test
  void sameSeedGivesTheSameSummary() {
    JsonNode first = demo("healthy", "--seed", "7").summary();
    JsonNode second = demo("healthy", "--seed", "7", "--label", "again").summary();
    assertThat(second.path("supply")).isEqualTo(first.path("supply"));
    assertThat(second.path("rails")).isEqualTo(first.path("rails"));
    assertThat(second.path("levels")).isEqualTo(first.path("levels"));
    assertThat(second.path("conversions")).isEqualTo(first.path("conversions"));
  }

  @Test
  void unknownScenarioIsRefusedWithTheKnownOnes() {
    CommandRunner.Result result =
        CommandRunner.run("demo", "--headless", "--scenario", "nonsense", "--for", "1s");
    assertThat(result.exitCode()).isEqualTo(64);
    assertThat(result.err()).contains("nonsense").contains("healthy").contains("wire-short");
  }

  @Test
  void aMistypedScenarioNamesTheNearestOneAndTheOthersInGroups() {
    CommandRunner.Result result =
        CommandRunner.run("demo", "--headless", "--scenario", "wire-shot", "--for", "1s");
    assertThat(result.exitCode()).isEqualTo(64);
    List<String> lines = result.err().lines().toList();
    assertThat(lines.get(0)).isEqualTo("firstamp: there is no scenario 'wire-shot'.");
    assertThat(lines.get(1)).isEqualTo("Did you mean 'wire-short'? There are:");
    assertThat(lines).allMatch(line -> line.length() <= 80);
    assertThat(lines).contains("  supply and current:", "  rails:", "  signal:");
    List<String> named =
        lines.stream()
            .filter(line -> line.startsWith("    "))
            .flatMap(line -> java.util.Arrays.stream(line.strip().split(" ")))
            .toList();
    assertThat(named).isEqualTo(firstamp.emulate.Scenarios.names());
  }

  @Test
  void keepsTheDemoWhereOneStandsUnlessAFileIsNamed() {
    assertThat(Logs.demoFile(null)).isEqualTo(Path.of("demo.db"));
    assertThat(Logs.demoFile(Path.of("mine.db"))).isEqualTo(Path.of("mine.db"));
  }
}
