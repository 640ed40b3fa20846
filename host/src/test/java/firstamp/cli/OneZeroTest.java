package firstamp.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import firstamp.cli.output.JsonLines;
import firstamp.cli.output.JsonRunOutput;
import firstamp.cli.output.TextRunOutput;
import firstamp.model.Happening;
import firstamp.model.OffCause;
import firstamp.model.ProbeEvent;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
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

  @Test
  void noLinkLogEventOrOffBeforeTheClosingCarriesATimeThatNobodyKnows() {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    JsonRunOutput out =
        new JsonRunOutput(
            new JsonLines(new PrintStream(bytes, true, StandardCharsets.UTF_8)), false);
    everyLine(out, 0);
    everyLine(out, -120);
    out.on();
    everyLine(out, 350);
    List<JsonNode> lines = bytes.toString(StandardCharsets.UTF_8).lines().map(this::json).toList();
    assertThat(lines).hasSize(12).allMatch(line -> JsonSchemas.against(line).isEmpty());
    assertThat(lines.subList(0, 4)).noneMatch(line -> line.has("atMs"));
    assertThat(lines.subList(4, 8)).allMatch(line -> line.path("atMs").asDouble() == -120);
    assertThat(lines.subList(8, 12)).allMatch(line -> line.path("atMs").asDouble() == 350);
  }

  private static void everyLine(JsonRunOutput out, double atMs) {
    out.link(ProbeEvent.LinkState.RESTORED, "answers again", atMs);
    out.log(new ProbeEvent.LogChanged(0, true, "writes again"), atMs);
    out.happened(new Happening.Recording(Happening.RecordState.ON), atMs);
    out.off(OffCause.USER, atMs);
  }

  @Test
  void anOffBeforeTheClosingIsSaidToBeBeforeIt() {
    assertThat(off(OffCause.USER, false, 0))
        .containsExactly("before the switch closed  off by user");
    assertThat(off(OffCause.LOOK, false, 0))
        .containsExactly(
            "before the switch closed  off: the first look does not let the switch close");
    assertThat(off(OffCause.USER, false, -120)).containsExactly("   -120.0 ms  off by user");
    assertThat(off(OffCause.USER, true, 0))
        .contains("      0.0 ms  off by user; opened, not yet proven");
  }

  private static List<String> off(OffCause by, boolean on, double atMs) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    PrintStream stream = new PrintStream(bytes, true, StandardCharsets.UTF_8);
    TextRunOutput out =
        new TextRunOutput(firstamp.cli.output.Speech.ENGLISH, stream, stream, false, false, null);
    if (on) {
      out.on();
    }
    out.off(by, atMs);
    return bytes.toString(StandardCharsets.UTF_8).lines().toList();
  }

  private JsonNode json(String line) {
    try {
      return new ObjectMapper().readTree(line);
    } catch (JsonProcessingException e) {
      throw new AssertionError(line, e);
    }
  }
}
