package firstamp.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * The commonest wiring fault: a short that is there when the switch closes. The limiter holds 12 A;
 * the heat allowed on the sheet is used up after (12^2 - 1^2) t = 0.5 A2s, 3.5 ms: long before the
 * 15 ms in which a surge may be held.
 */
class ShortAtClosingTest {
  private static final String SHEET =
      "{\"sheet\":1,\"set\":{\"name\":\"Shorted set (invented)\",\"kind\":\"other\",\"chassis\":\"negative\"},"
          + "\"supply\":{\"kind\":\"bench\",\"nominalV\":12,\"limitA\":6,\"fuseA\":5},"
          + "\"limits\":{\"inrushA\":4.5,\"inrushMs\":60,\"runningA\":1.0,\"i2tA2s\":0.5}}";
  private static final String FRONT_END =
      "{\"look\":{\"supplyV\":12,\"loadOhm\":210,\"loadUf\":1000},\"decayMs\":50}";
  private static final String SHORT = "t_s,supply_V,supply_A\n0,12,12\n60,12,12\n";

  @TempDir private Path folder;

  private static void cutWithinTheHeatAllowed(CommandRunner.Result result) {
    JsonNode summary = result.summary();
    assertThat(summary.path("tripCause").asText()).isEqualTo("i2t");
    double atMs = summary.path("tripAtMs").asDouble();
    assertThat(atMs).isBetween(3.0, 3.5);
    assertThat(summary.path("onMs").asDouble()).isEqualTo(atMs);
    assertThat(result.json("trip").get(0).path("atMs").asDouble()).isEqualTo(atMs);
    for (JsonNode alarm : summary.path("alarms")) {
      assertThat(alarm.path("atMs").asDouble()).as("%s", alarm).isEqualTo(atMs);
    }
    assertThat(summary.path("alarms").findValuesAsText("rule")).contains("over-current", "short");
  }

  @Test
  void onTheEmulatedProbe() throws Exception {
    CommandRunner.Result result =
        CommandRunner.run(
            "demo",
            "--headless",
            "--json",
            "--speed",
            "max",
            "--for",
            "1s",
            "--waveform",
            Files.writeString(folder.resolve("w.csv"), SHORT).toString(),
            "--front-end",
            Files.writeString(folder.resolve("f.json"), FRONT_END).toString(),
            "--sheet",
            Files.writeString(folder.resolve("s.json"), SHEET).toString(),
            "--log",
            folder.resolve("log.db").toString());
    cutWithinTheHeatAllowed(result);
  }

  @Tag("chip")
  @Timeout(value = 60, unit = TimeUnit.SECONDS)
  @Test
  void onTheFirmwareInTheSimulatedChip() throws Exception {
    ChipRig.assumeTools();
    Path waveform = Files.writeString(folder.resolve("w.csv"), SHORT);
    Path front = Files.writeString(folder.resolve("f.json"), FRONT_END);
    Path sheet = Files.writeString(folder.resolve("s.json"), SHEET);
    try (ChipRig chip = ChipRig.start(folder, waveform, "--front-end", front.toString())) {
      List<String> command =
          List.of(
              "watch",
              "--port",
              chip.port(),
              "--sheet",
              sheet.toString(),
              "--accept",
              "floating-supply,above-60",
              "--headless",
              "--json",
              "--countdown",
              "0",
              "--for",
              "1s",
              "--log",
              folder.resolve("log.db").toString());
      CommandRunner.Result result = CommandRunner.run(command.toArray(String[]::new));
      cutWithinTheHeatAllowed(result);
    }
  }
}
