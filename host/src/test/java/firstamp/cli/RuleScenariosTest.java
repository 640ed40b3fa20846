package firstamp.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import firstamp.emulate.Scenarios;
import firstamp.model.RuleId;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Every rule has a scenario of the demo in which it speaks first, and is the one cause on top. */
class RuleScenariosTest {
  @TempDir Path folder;

  private CommandRunner.Result demo(String scenario) {
    return CommandRunner.run(
        "demo",
        "--headless",
        "--json",
        "--speed",
        "max",
        "--for",
        Scenarios.seconds(scenario) + "s",
        "--scenario",
        scenario,
        "--log",
        folder.resolve(scenario + ".db").toString());
  }

  private static List<String> onTop(JsonNode summary) {
    List<String> top = new ArrayList<>();
    summary
        .path("alarms")
        .forEach(
            alarm -> {
              if (!alarm.has("foldedUnder")) {
                top.add(alarm.path("rule").asText());
              }
            });
    return top;
  }

  @ParameterizedTest
  @EnumSource(RuleId.class)
  void theRuleSpeaksFirstAndIsTheOneCauseOnTop(RuleId rule) {
    String scenario = Scenarios.showing(rule);
    CommandRunner.Result result = demo(scenario);
    for (JsonNode line : result.json()) {
      assertThat(JsonSchemas.against(line)).as("schema of %s", line).isEmpty();
    }
    JsonNode summary = result.summary();
    assertThat(summary.path("alarms")).as("%s: %s", scenario, summary).isNotEmpty();
    JsonNode first = summary.path("alarms").path(0);
    assertThat(first.path("rule").asText()).as(scenario).isEqualTo(rule.id());
    assertThat(onTop(summary)).as("%s: %s", scenario, summary).containsExactly(rule.id());
    assertThat(result.json("alarm").get(0).path("rule").asText()).isEqualTo(rule.id());
    // What is folded began no earlier than what stands on top.
    summary
        .path("alarms")
        .forEach(
            alarm ->
                assertThat(alarm.path("sinceMs").asDouble())
                    .isGreaterThanOrEqualTo(first.path("sinceMs").asDouble()));
    assertThat(result.exitCode()).isEqualTo(rule == RuleId.NOT_LOGGING ? 74 : 3);
    assertThat(result.err()).as("no warning about its own sheet").doesNotContain(" is above ");
  }

  /** A short on the full set: the trip on top, the short under it, nothing else beside them. */
  @Test
  void aShortOnAFullSetShowsOneCauseAndTheRestUnderIt() {
    JsonNode summary = demo("wire-short").summary();
    assertThat(onTop(summary)).containsExactly("over-current");
    assertThat(summary.path("alarms").path(1).path("rule").asText()).isEqualTo("short");
    assertThat(summary.path("alarms").path(1).path("foldedUnder").asInt()).isEqualTo(1);
    // 1.2 ohm across the lead, and the set beside it.
    assertThat(summary.path("alarms").path(1).path("value").asDouble()).isBetween(1.0, 1.6);
  }

  @Test
  void setsWithNothingWrongRaiseNothing() {
    for (String scenario : List.of("healthy", "speech", "mains", "radio", "amplifier")) {
      CommandRunner.Result result = demo(scenario);
      assertThat(result.summary().path("alarms")).as(scenario).isEmpty();
      assertThat(result.exitCode()).as(scenario).isZero();
      assertThat(result.err()).as(scenario).doesNotContain(" is above ");
    }
  }
}
