package firstamp.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import firstamp.model.RuleId;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The schema and the reader say the same. The validator (a general-purpose library for JSON Schema
 * 2020-12) is the oracle from outside.
 */
class SheetSchemaTest {
  private static final String TEXT = text();
  private static final Schema SCHEMA =
      SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
          .getSchema(TEXT, InputFormat.JSON);

  private static String text() {
    try (InputStream in =
        SheetSchemaTest.class.getResourceAsStream("/schemas/job-sheet.schema.json")) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }

  private static boolean bySchema(String sheet) {
    return SCHEMA.validate(sheet, InputFormat.JSON).isEmpty();
  }

  private static boolean byReader(String sheet) {
    try {
      SheetReader.parse("s.json", sheet);
      return true;
    } catch (SheetException e) {
      return false;
    }
  }

  @Test
  void bothTakeTheExampleAndWhatIsWritten() throws SheetException {
    String written =
        SheetWriter.write(Defaults.fill(SheetReader.parse("s", Sheets.DICTATION_UNIT).sheet()));
    for (String sheet : List.of(Sheets.DICTATION_UNIT, Sheets.minimal(""), written)) {
      assertThat(SCHEMA.validate(sheet, InputFormat.JSON)).isEmpty();
      assertThat(byReader(sheet)).isTrue();
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        ",\"limits\":{\"runningA\":0}",
        ",\"limits\":{\"runningA\":-1}",
        ",\"limits\":{\"runningA\":\"1\"}",
        ",\"limits\":{\"runningA\":null}",
        ",\"limits\":{\"runingA\":1}",
        ",\"rails\":[{\"input\":4}]",
        ",\"rails\":[{\"input\":1.5}]",
        ",\"rails\":[{\"input\":1,\"tolerancePercent\":100.5}]",
        ",\"rails\":[{\"input\":1,\"nominalV\":0.05}]",
        ",\"rails\":[{}]",
        ",\"rails\":{}",
        ",\"levels\":[]",
        ",\"rules\":{\"shrt\":{}}",
        ",\"rules\":{\"short\":{\"belowohm\":1}}",
        ",\"rules\":{\"short\":{\"belowOhm\":0}}",
        ",\"rules\":{\"short\":{\"priority\":\"urgent\"}}",
        ",\"rules\":{\"output-offset\":{\"input\":4}}",
        ",\"rules\":{\"no-draw\":{\"belowOhm\":1}}",
        ",\"path\":{\"points\":[{}]}",
        ",\"unknownWires\":[{\"places\":[\"P1\"]}]",
        ",\"unknownWires\":[{\"name\":\" \"}]",
        ",\"unknownWires\":[{\"name\":\"W3\",\"places\":[{\"kind\":\"rail\"}]}]",
        ",\"unknownWires\":[{\"name\":\"W3\",\"places\":[{\"name\":\"P1\",\"kind\":\"tail\"}]}]",
        ",\"path\":{\"points\":[{\"name\":\"P1\",\"effort\":0.5}]}",
        ",\"path\":{\"points\":[{\"name\":\"P1\",\"byMode\":[{\"mode\":\"record\"}]}]}",
        ",\"path\":{\"modes\":[{\"name\":\"record\"}]}",
        ",\"sheet\":2",
      })
  void bothRefuse(String more) {
    assertThat(byReader(Sheets.minimal(more))).as("reader takes " + more).isFalse();
    assertThat(bySchema(Sheets.minimal(more))).as("schema takes " + more).isFalse();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        ",\"limits\":{\"runningA\":100}",
        ",\"rails\":[{\"input\":1,\"tolerancePercent\":100}]",
        ",\"rails\":[{\"input\":3,\"nominalV\":-60}]",
        ",\"rules\":{\"hum\":{\"aboveDbv\":-60,\"latch\":true}}",
        ",\"rules\":{\"output-offset\":{\"input\":2}}",
        ",\"path\":{\"points\":[{\"name\":\"P1\"},{\"name\":\"P2\",\"expectedDbv\":-20}],"
            + "\"joints\":[{\"name\":\"driver\",\"from\":\"P1\",\"to\":\"P2\",\"kind\":\"stage\"}]}",
        ",\"unknownWires\":[{\"name\":\"W3\",\"places\":[\"P7\",\"P2\"]}]",
        ",\"unknownWires\":[{\"name\":\"W3\",\"colour\":\"grey\",\"build\":\"screened\",\"reachMm\":85,"
            + "\"foundAt\":\"loose\",\"places\":[{\"name\":\"P7\",\"kind\":\"rail\",\"ifWrong\":\"short\"},\"P2\"]}]",
        ",\"path\":{\"modes\":[{\"name\":\"record\",\"source\":\"P1\"}],"
            + "\"points\":[{\"name\":\"P1\",\"effort\":2,\"byMode\":[{\"mode\":\"record\",\"expectedDbv\":-30}]},"
            + "{\"name\":\"P2\"}],\"joints\":[{\"name\":\"C1\",\"from\":\"P1\",\"to\":\"P2\",\"kind\":\"capacitor\","
            + "\"modes\":[\"record\"],\"weight\":2.5}]}",
      })
  void bothTake(String more) {
    assertThat(byReader(Sheets.minimal(more))).as("reader refuses " + more).isTrue();
    assertThat(bySchema(Sheets.minimal(more))).as("schema refuses " + more).isTrue();
  }

  @Test
  void keysAndRangesAreTheSame() throws IOException {
    JsonNode top = new ObjectMapper().readTree(TEXT).get("properties");
    List<String> differences = new ArrayList<>();
    compare("", names(top), Keys.TOP.keySet(), differences);
    compare("set", top.at("/set/properties"), Keys.SET, differences);
    compare("supply", top.at("/supply/properties"), Keys.SUPPLY, differences);
    compare("limits", top.at("/limits/properties"), Keys.LIMITS, differences);
    compare("rails", top.at("/rails/items/properties"), Keys.RAIL, differences);
    compare("levels", top.at("/levels/properties"), Keys.LEVELS, differences);
    compare("points", top.at("/path/properties/points/items/properties"), Keys.POINT, differences);
    compare("joints", top.at("/path/properties/joints/items/properties"), Keys.JOINT, differences);
    compare("wires", top.at("/unknownWires/items/properties"), Keys.WIRE, differences);
    compare("modes", top.at("/path/properties/modes/items/properties"), Keys.MODE, differences);
    compare(
        "byMode",
        top.at("/path/properties/points/items/properties/byMode/items/properties"),
        Keys.MODE_LEVEL,
        differences);
    compare(
        "places",
        top.at("/unknownWires/items/properties/places/items/anyOf/1/properties"),
        Keys.LANDING,
        differences);
    for (RuleId rule : RuleId.values()) {
      Map<String, Object> keys = new java.util.LinkedHashMap<>(Keys.RULE);
      for (RuleId.Parameter one : rule.parameters().values()) {
        keys.put(one.name(), new Range(one.lowest(), one.highest(), ""));
      }
      compare(
          rule.id(), top.at("/rules/properties/" + rule.id() + "/properties"), keys, differences);
    }
    assertThat(differences).isEmpty();
  }

  private static Set<String> names(JsonNode node) {
    Set<String> names = new LinkedHashSet<>();
    node.fieldNames().forEachRemaining(names::add);
    return names;
  }

  private static void compare(
      String place, Set<String> schema, Set<String> reader, List<String> differences) {
    if (!schema.equals(reader)) {
      differences.add(place + ": " + schema + " against " + reader);
    }
  }

  private static void compare(
      String place, JsonNode schema, Map<String, Object> reader, List<String> differences) {
    compare(place, names(schema), reader.keySet(), differences);
    for (Map.Entry<String, Object> entry : reader.entrySet()) {
      JsonNode node = schema.path(entry.getKey());
      node = node.has("allOf") ? node.get("allOf").get(0) : node;
      String said = entry.getValue().toString();
      String there = said;
      if (entry.getValue() instanceof Range range) {
        there = new Range(at(node, "minimum"), at(node, "maximum"), range.unit()).toString();
      } else if (entry.getValue() instanceof List<?> words) {
        List<String> listed = new ArrayList<>();
        node.path("enum").forEach(word -> listed.add(word.asText()));
        there = listed.toString();
        said = words.toString();
      }
      if (!there.equals(said)) {
        differences.add(place + "." + entry.getKey() + ": " + there + " against " + said);
      }
    }
  }

  private static double at(JsonNode node, String key) {
    return node.has(key) ? node.get(key).asDouble() : Double.NaN;
  }
}
