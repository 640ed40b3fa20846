package firstamp.cli;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.Error;
import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Set;

/**
 * The published schemas of lines and exports, as an oracle from outside. They are open, so that a
 * reader of last year takes a key that was added since; for our own output they are closed here, so
 * that no key is written that they do not know.
 */
public final class JsonSchemas {
  /** Described elsewhere: the kinds of a line, the summary, and alarms, each as its line. */
  private static final Set<String> OPEN =
      Set.of("lines", "power-up/properties/summary", "power-up/properties/alarmTransitions/items");

  private static final JsonNode LINES_TEXT = read("/schemas/json-lines.schema.json");
  private static final JsonNode POWER_UP_TEXT = read("/schemas/power-up.schema.json");
  private static final Schema PUBLISHED_LINES = schema(LINES_TEXT);
  private static final Schema PUBLISHED_POWER_UP = schema(POWER_UP_TEXT);
  private static final Schema LINES = schema(closed(LINES_TEXT.deepCopy(), "lines"));
  private static final Schema POWER_UP = schema(closed(POWER_UP_TEXT.deepCopy(), "power-up"));

  private JsonSchemas() {}

  /** What the schema of exported power-ups, closed, says against one; empty = nothing. */
  static List<String> againstPowerUp(JsonNode export) {
    return against(POWER_UP, export);
  }

  /** What the schema, closed, says against a line; empty = nothing. */
  public static List<String> against(JsonNode line) {
    return against(LINES, line);
  }

  /** What the schemas as published say. */
  static List<String> publishedAgainst(JsonNode node) {
    return against(
        "export".equals(node.path("type").asText()) ? PUBLISHED_POWER_UP : PUBLISHED_LINES, node);
  }

  private static List<String> against(Schema schema, JsonNode node) {
    return schema.validate(node.toString(), InputFormat.JSON).stream()
        .map(Error::toString)
        .toList();
  }

  private static JsonNode closed(JsonNode node, String path) {
    if (node instanceof ObjectNode object
        && object.has("properties")
        && "object".equals(object.path("type").asText())
        && !OPEN.contains(path)) {
      object.put("additionalProperties", false);
    }
    node.properties().forEach(each -> closed(each.getValue(), path + "/" + each.getKey()));
    if (node.isArray()) {
      node.forEach(each -> closed(each, path + "/"));
    }
    return node;
  }

  private static JsonNode read(String resource) {
    try (InputStream in = JsonSchemas.class.getResourceAsStream(resource)) {
      return new ObjectMapper().readTree(in);
    } catch (IOException broken) {
      throw new UncheckedIOException(resource, broken);
    }
  }

  private static Schema schema(JsonNode text) {
    return SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
        .getSchema(text.toString(), InputFormat.JSON);
  }
}
