package firstamp.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import firstamp.cli.output.JsonLines;
import firstamp.cli.output.JsonRunOutput;
import firstamp.log.BenchLog;
import firstamp.model.Conditions;
import firstamp.model.Difference;
import firstamp.model.OffReason;
import firstamp.model.ProbeEvent;
import firstamp.model.TimeSource;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the person told, as lines: during a run and when a logged one is played again. */
class ToldLinesTest {
  private static final ProbeEvent.Told LEFT =
      new ProbeEvent.ConditionsSaid(
          14_500_000, new Conditions(Conditions.Load.DUMMY_LOAD, null, Conditions.Function.PHONO));
  private static final List<ProbeEvent.Told> ALL =
      List.of(
          LEFT,
          new ProbeEvent.Answered(14_500_000, "hook-up", 1_700_000_000_000L),
          new ProbeEvent.SwitchedOnAgain(14_500_000, 7, Difference.WIRE, 2, 820.0, null),
          new ProbeEvent.SwitchedOnAgain(14_500_000, 8, Difference.NOTHING, 0, null, 6.0),
          new ProbeEvent.OffExplained(14_500_000, OffReason.SMOKE));

  @TempDir private Path folder;

  private static List<JsonNode> lines(boolean closed, double atMs) throws Exception {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    JsonRunOutput output =
        new JsonRunOutput(
            new JsonLines(new PrintStream(bytes, true, StandardCharsets.UTF_8)), false);
    if (closed) {
      output.on();
    }
    ALL.forEach(told -> output.told(told, atMs));
    List<JsonNode> nodes = new ArrayList<>();
    for (String line : bytes.toString(StandardCharsets.UTF_8).split("\n")) {
      nodes.add(new ObjectMapper().readTree(line));
    }
    return nodes;
  }

  @Test
  void eachHasItsLineThatTheSchemaKnows() throws Exception {
    List<JsonNode> lines = lines(true, 12.5);
    assertThat(lines.stream().map(JsonNode::toString))
        .containsExactly(
            "{\"type\":\"event\",\"kind\":\"conditions\",\"load\":\"dummy-load\",\"function\":\"phono\",\"atMs\":12.5}",
            "{\"type\":\"event\",\"kind\":\"answered\",\"question\":\"hook-up\",\"answeredEpochMs\":1700000000000,\"atMs\":12.5}",
            "{\"type\":\"event\",\"kind\":\"again\",\"afterTrip\":7,\"different\":\"wire\",\"rail\":2,\"ohm\":820.0,\"atMs\":12.5}",
            "{\"type\":\"event\",\"kind\":\"again\",\"afterTrip\":8,\"different\":\"nothing\",\"halfV\":6.0,\"atMs\":12.5}",
            "{\"type\":\"event\",\"kind\":\"off-reason\",\"reason\":\"smoke\",\"atMs\":12.5}");
    assertThat(lines).allSatisfy(line -> assertThat(JsonSchemas.against(line)).isEmpty());
  }

  @Test
  void beforeTheClosingNobodyKnowsTheTime() throws Exception {
    assertThat(lines(false, 0))
        .hasSize(ALL.size())
        .allSatisfy(line -> assertThat(line.has("atMs")).isFalse())
        .allSatisfy(line -> assertThat(JsonSchemas.against(line)).isEmpty());
  }

  @Test
  void aReplayTellsThemAgain() throws Exception {
    Path file = folder.resolve("bench.db");
    MarkedRun.make(file);
    try (BenchLog log = BenchLog.open(file, TimeSource.system())) {
      log.later(1, new ProbeEvent.OffExplained(14_600_000, OffReason.WARM));
    }
    CommandRunner.Result result =
        CommandRunner.run(
            "replay", "1", "--headless", "--json", "--speed", "max", "--log", file.toString());
    assertThat(result.json("event"))
        .filteredOn(line -> line.get("kind").asText().equals("off-reason"))
        .extracting(line -> line.get("reason").asText(), line -> line.get("atMs").asDouble())
        .containsExactly(org.assertj.core.groups.Tuple.tuple("warm", 12_600.0));
    assertThat(result.json("event"))
        .allSatisfy(line -> assertThat(JsonSchemas.against(line)).isEmpty());
  }
}
