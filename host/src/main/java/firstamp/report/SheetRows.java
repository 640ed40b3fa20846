package firstamp.report;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;

/** A stored job sheet as rows: each key as in the file (it carries the unit), its value. */
final class SheetRows {
  private static final ObjectMapper MAPPER = new ObjectMapper();

  private SheetRows() {}

  /**
   * The filled sheet, but of the rules only what the person changed: hundreds of usual values would
   * bury the rest.
   *
   * @param effectiveJson with every default
   * @param givenJson as the person wrote it
   */
  static List<List<String>> of(String effectiveJson, String givenJson) {
    List<List<String>> rows = new ArrayList<>();
    try {
      ObjectNode effective = (ObjectNode) MAPPER.readTree(effectiveJson);
      effective.set("rules", MAPPER.readTree(givenJson).path("rules"));
      add("", effective, rows);
    } catch (JsonProcessingException damaged) {
      // The chain has read this text as a sheet already.
      throw new IllegalStateException("a stored sheet that is no JSON", damaged);
    }
    return rows;
  }

  /** A small object in one line: key and value of each field; text that is no JSON as it is. */
  static String inWords(String json) {
    try {
      List<List<String>> rows = new ArrayList<>();
      add("", MAPPER.readTree(json), rows);
      return String.join("; ", rows.stream().map(row -> String.join(" ", row).trim()).toList());
    } catch (JsonProcessingException plain) {
      return json;
    }
  }

  private static void add(String path, JsonNode node, List<List<String>> rows) {
    if (node.isObject()) {
      for (var field : node.properties()) {
        add(path.isEmpty() ? field.getKey() : path + "." + field.getKey(), field.getValue(), rows);
      }
    } else if (node.isArray()) {
      for (int k = 0; k < node.size(); k++) {
        add(path + " " + (k + 1), node.get(k), rows);
      }
    } else if (node.isValueNode() && !node.isNull()) {
      rows.add(List.of(path, number(node)));
    }
  }

  /** 12, not 12.0: as a person writes it. */
  private static String number(JsonNode node) {
    return node.isNumber()
        ? node.decimalValue().stripTrailingZeros().toPlainString()
        : node.asText();
  }
}
