package firstamp.cli;

import com.fasterxml.jackson.databind.JsonNode;
import com.networknt.schema.Error;
import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;

/** The published schema of the lines, as an oracle from outside. */
final class JsonSchemas {
  private static final Schema LINES = load("/schemas/json-lines.schema.json");

  private static final Schema POWER_UP = load("/schemas/power-up.schema.json");

  private JsonSchemas() {}

  /** What the schema of exported power-ups says against one; empty = nothing. */
  static List<String> againstPowerUp(JsonNode export) {
    return POWER_UP.validate(export.toString(), InputFormat.JSON).stream()
        .map(Error::toString)
        .toList();
  }

  /** What the schema says against a line; empty = nothing. */
  static List<String> against(JsonNode line) {
    return LINES.validate(line.toString(), InputFormat.JSON).stream().map(Error::toString).toList();
  }

  private static Schema load(String resource) {
    try (InputStream in = JsonSchemas.class.getResourceAsStream(resource)) {
      String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
      return SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
          .getSchema(text, InputFormat.JSON);
    } catch (IOException broken) {
      throw new UncheckedIOException(resource, broken);
    }
  }
}
