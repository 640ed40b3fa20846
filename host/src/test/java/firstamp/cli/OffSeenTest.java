package firstamp.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** An opening of the switch is reported when it is seen, and missed when it is not. */
class OffSeenTest {
  private static final String SHEET =
      "{\"sheet\":1,\"set\":{\"name\":\"Set on a line\"},"
          + "\"supply\":{\"nominalV\":12,\"fuseA\":1}}";

  @TempDir private Path folder;

  private CommandRunner.Result demo(String... more) {
    List<String> all =
        new ArrayList<>(
            List.of("demo", "--headless", "--json", "--speed", "max", "--for", "1s", "--log"));
    all.add(folder.resolve("l.db").toString());
    all.addAll(List.of(more));
    return CommandRunner.run(all.toArray(String[]::new));
  }

  /** 12 V, 0.1 A; with the switch open the volts fall with this time constant. */
  private CommandRunner.Result fallingIn(double decayMs) throws IOException {
    Path wave =
        Files.writeString(folder.resolve("w.csv"), "t_s,supply_V,supply_A\n0,12,0.1\n9,12,0.1\n");
    Path sheet = Files.writeString(folder.resolve("s.json"), SHEET);
    Path front =
        Files.writeString(
            folder.resolve("f.json"),
            "{\"decayMs\":" + decayMs + ",\"look\":{\"loadOhm\":120,\"loadUf\":1000}}");
    return demo(
        "--waveform",
        wave.toString(),
        "--sheet",
        sheet.toString(),
        "--front-end",
        front.toString());
  }

  private static List<JsonNode> seen(CommandRunner.Result result) {
    return result.json("offSeen");
  }

  @Test
  void voltsThatFallShowIt() throws IOException {
    CommandRunner.Result result = fallingIn(200);
    assertThat(seen(result)).hasSize(1);
    // 12 V with 200 ms: three counts of 59 mV are missing after 3 ms, read in the next 10 ms.
    double onMs = result.summary().path("onMs").asDouble();
    assertThat(seen(result).get(0).path("atMs").asDouble()).isBetween(onMs + 3, onMs + 23);
    assertThat(result.exitCode()).isZero();
  }

  @Test
  void voltsThatDoNotFallAreASwitchThatMayNotBeOpen() throws IOException {
    CommandRunner.Result result = fallingIn(1e7);
    JsonNode summary = result.summary();
    assertThat(seen(result)).isEmpty();
    assertThat(result.exitCode()).isEqualTo(3);
    JsonNode alarm = summary.path("alarms").get(0);
    assertThat(alarm.path("rule").asText()).isEqualTo("switch-failed");
    // Two seconds, and the reading that is over after them.
    double late = alarm.path("atMs").asDouble() - summary.path("onMs").asDouble();
    assertThat(late).isBetween(2000.0, 2021.0);
    assertThat(alarm.path("unit").asText()).isEqualTo("V");
    assertThat(alarm.path("text").asText())
        .contains("do not fall although the switch was opened")
        .contains("Take both plugs out of the supply");
  }

  @Test
  void textSaysNotYetProvenUntilItIsSeen() {
    CommandRunner.Result result =
        CommandRunner.run(
            "demo",
            "--headless",
            "--speed",
            "max",
            "--for",
            "1s",
            "--log",
            folder.resolve("t.db").toString());
    String out = String.join("\n", result.out()) + result.err();
    assertThat(out).containsSubsequence("opened, not yet proven", "off is seen");
  }

  @ParameterizedTest
  @ValueSource(strings = {"healthy", "limiting"})
  void aSetThatEmptiesSlowlyIsWaitedFor(String scenario) {
    CommandRunner.Result result = demo("--scenario", scenario);
    assertThat(seen(result)).hasSize(1);
    assertThat(result.summary().path("alarms").findValuesAsText("rule"))
        .doesNotContain("switch-failed");
  }
}
