package firstamp.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A wire shorts the running set: the limiter holds 12 A for 17 conversions of 62.5 us, 1.0625 ms,
 * then the switch opens (hard short, trip-rules.md). The time is reported as it happens and in a
 * replay from the log.
 */
class LimiterHeldTest {
  private static final String SHEET =
      "{\"sheet\":1,\"set\":{\"name\":\"Shorted set (invented)\",\"kind\":\"other\",\"chassis\":\"negative\"},"
          + "\"supply\":{\"kind\":\"bench\",\"nominalV\":12},"
          + "\"limits\":{\"inrushA\":12.2,\"inrushMs\":200,\"runningA\":1,\"i2tA2s\":50}}";
  private static final String WAVE =
      "t_s,supply_V,supply_A\n0,12,0.1\n0.1,12,0.1\n0.10001,1,12\n60,1,12\n";

  @TempDir private Path folder;

  private CommandRunner.Result run(String... more) throws Exception {
    String[] usual = {
      "demo",
      "--headless",
      "--speed",
      "max",
      "--for",
      "1s",
      "--ideal",
      "--waveform",
      Files.writeString(folder.resolve("w.csv"), WAVE).toString(),
      "--sheet",
      Files.writeString(folder.resolve("s.json"), SHEET).toString(),
      "--log",
      folder.resolve("log.db").toString()
    };
    String[] all = java.util.Arrays.copyOf(usual, usual.length + more.length);
    System.arraycopy(more, 0, all, usual.length, more.length);
    return CommandRunner.run(all);
  }

  private static JsonNode trip(CommandRunner.Result result) {
    JsonNode trip = result.json("trip").get(0);
    assertThat(JsonSchemas.against(trip)).isEmpty();
    return trip;
  }

  @Test
  void theTimeIsInTheLineTheSentenceAndTheLog() throws Exception {
    CommandRunner.Result live = run("--json");
    assertThat(live.exitCode()).as(live.err()).isEqualTo(3);
    JsonNode trip = trip(live);
    assertThat(trip.path("cause").asText()).isEqualTo("hard-short");
    assertThat(trip.path("limitedMs").asDouble()).isEqualTo(1.0625);
    assertThat(trip.path("value").asDouble()).isBetween(11.9, 12.1);
    assertThat(live.summary().path("alarms").findValuesAsText("text"))
        .anySatisfy(
            text ->
                assertThat(text)
                    .startsWith(
                        "A hard short: the limiter held 12 A for 1.06 ms, then the supply"));
    CommandRunner.Result again =
        CommandRunner.run(
            "replay",
            "last",
            "--headless",
            "--json",
            "--speed",
            "max",
            "--log",
            folder.resolve("log.db").toString());
    assertThat(trip(again)).isEqualTo(trip);
    CommandRunner.Result shown =
        CommandRunner.run("show", "last", "--log", folder.resolve("log.db").toString());
    assertThat(String.join("\n", shown.out()))
        .contains("the limiter held 12 A for 1.06 ms, then it switched itself off");
  }

  @Test
  void theTextOfARunSaysItToo() throws Exception {
    assertThat(String.join("\n", run().out())).contains("the limiter held it for 1.06 ms");
  }
}
