package firstamp.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Times of readings and marks count from the closing, or there is none. */
class OneZeroTest {
  @TempDir private Path folder;

  private CommandRunner.Result demo(String scenario) {
    return CommandRunner.run(
        "demo",
        "--headless",
        "--json",
        "--readings",
        "--speed",
        "max",
        "--scenario",
        scenario,
        "--for",
        "500ms",
        "--log",
        log());
  }

  private String log() {
    return folder.resolve("log.db").toString();
  }

  @Test
  void aReadingBeforeTheClosingHasItsProbeTimeAlone() {
    List<JsonNode> readings = demo("healthy").json("reading");
    List<JsonNode> before = readings.stream().filter(line -> !line.has("atMs")).toList();
    List<JsonNode> after = readings.stream().filter(line -> line.has("atMs")).toList();
    assertThat(before.size()).isGreaterThan(200);
    // The reading that ends with the closing may be told after it.
    assertThat(after.get(0).path("atMs").asDouble()).isIn(-10.0, 0.0);
    double closed = after.get(0).path("probeMs").asDouble() - after.get(0).path("atMs").asDouble();
    assertThat(before).allMatch(line -> line.path("probeMs").asDouble() < closed);
    for (JsonNode line : after) {
      assertThat(line.path("probeMs").asDouble() - line.path("atMs").asDouble())
          .isCloseTo(closed, org.assertj.core.data.Offset.offset(1e-6));
    }
    assertThat(JsonSchemas.against(before.get(0))).isEmpty();
    assertThat(JsonSchemas.against(after.get(0))).isEmpty();
  }

  @Test
  void aReplayKnowsTheClosingAndCountsDownToIt() {
    demo("healthy");
    List<JsonNode> readings =
        CommandRunner.run(
                "replay",
                "last",
                "--headless",
                "--json",
                "--readings",
                "--speed",
                "max",
                "--log",
                log())
            .json("reading");
    assertThat(readings.get(0).path("atMs").asDouble()).isLessThan(-2000);
    double last = Double.NEGATIVE_INFINITY;
    for (JsonNode line : readings) {
      double atMs = line.path("atMs").asDouble();
      assertThat(atMs).isGreaterThan(last);
      last = atMs;
    }
  }
}
