package firstamp.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Keys are only ever added: whoever reads lines and exports by the schema of today takes those of
 * later versions. JSON Schema 2020-12, Core 10.3.2.3: what {@code additionalProperties} does not
 * refuse is allowed.
 */
class OpenSchemasTest {
  @TempDir private Path folder;

  private List<JsonNode> run(String... line) {
    CommandRunner.Result result = CommandRunner.run(line);
    assertThat(result.exitCode()).as(result.err()).isLessThan(4);
    return result.json();
  }

  /** The same with a key that is not known yet, in every object. */
  private static JsonNode later(JsonNode node) {
    List<JsonNode> within = new ArrayList<>();
    node.forEach(within::add);
    within.forEach(OpenSchemasTest::later);
    if (node instanceof ObjectNode object) {
      object.put("keyOfALaterVersion", 1);
    }
    return node;
  }

  @Test
  void everyLineTakesAKeyOfALaterVersion() throws Exception {
    String log = folder.resolve("log.db").toString();
    List<JsonNode> lines = new ArrayList<>();
    for (String scenario : List.of("healthy", "wire-short", "hum")) {
      lines.addAll(
          run(
              "demo",
              "--headless",
              "--json",
              "--readings",
              "--speed",
              "max",
              "--for",
              "3s",
              "--scenario",
              scenario,
              "--log",
              log));
    }
    lines.addAll(run("list", "--json", "--log", log));
    lines.addAll(run("compare", "1", "2", "--json", "--log", log));
    assertThat(lines.stream().map(line -> line.path("type").asText()).collect(Collectors.toSet()))
        .contains(
            "started",
            "look",
            "alarm",
            "trip",
            "off",
            "reading",
            "summary",
            "powerUp",
            "figure",
            "comparison");
    for (JsonNode line : lines) {
      assertThat(JsonSchemas.against(line)).as("%s", line).isEmpty();
      JsonNode later = later(line);
      assertThat(JsonSchemas.publishedAgainst(later)).as("%s", later).isEmpty();
      assertThat(JsonSchemas.against(later)).as("closed: %s", later).isNotEmpty();
    }
  }

  @Test
  void anExportTakesAKeyOfALaterVersion() throws Exception {
    String log = folder.resolve("log.db").toString();
    run("demo", "--headless", "--json", "--speed", "max", "--for", "1s", "--log", log);
    Path file = folder.resolve("x.json");
    CommandRunner.run("export", "last", "--format", "json", "--to", file.toString(), "--log", log);
    JsonNode export = new ObjectMapper().readTree(file.toFile());
    assertThat(JsonSchemas.againstPowerUp(export)).isEmpty();
    JsonNode later = later(export);
    assertThat(JsonSchemas.publishedAgainst(later)).isEmpty();
    assertThat(JsonSchemas.againstPowerUp(later)).isNotEmpty();
  }
}
