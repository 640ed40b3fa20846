package firstamp.model.text;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/** Reads the fields of a state file strictly; failures name the field. */
public final class JsonText {
  private static final JsonMapper MAPPER =
      JsonMapper.builder(
              JsonFactory.builder()
                  .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
                  .streamReadConstraints(
                      StreamReadConstraints.builder()
                          .maxDocumentLength(1_000_000)
                          .maxNestingDepth(32)
                          .maxStringLength(10_000)
                          .build())
                  .build())
          .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
          .build();

  private JsonText() {}

  public static JsonNode parse(String text) {
    try {
      JsonNode node = MAPPER.readTree(text);
      if (node == null || !node.isObject()) {
        throw new IllegalArgumentException("the file holds no JSON object");
      }
      return node;
    } catch (JsonProcessingException bad) {
      throw new IllegalArgumentException(
          "not JSON: " + JsonWords.of(bad.getOriginalMessage()) + at(bad), bad);
    }
  }

  private static String at(JsonProcessingException bad) {
    return bad.getLocation() == null
        ? ""
        : " in line "
            + bad.getLocation().getLineNr()
            + ", column "
            + bad.getLocation().getColumnNr();
  }

  public static String write(JsonNode node) {
    return node.toPrettyString() + "\n";
  }

  /** Refuses unknown keys, so that a misspelt key is not taken for a missing one. */
  public static void onlyKeys(JsonNode node, String where, String... known) {
    Set<String> keys = Set.of(known);
    node.fieldNames()
        .forEachRemaining(
            key -> {
              if (!keys.contains(key)) {
                throw new IllegalArgumentException(
                    where
                        + " has an unknown key "
                        + key
                        + ", expected "
                        + String.join(", ", known));
              }
            });
  }

  public static String text(JsonNode node, String key, String where) {
    String value = textOrNull(node, key, where);
    if (value == null || value.isBlank()) {
      throw new IllegalArgumentException(where + " needs the text " + key);
    }
    return value;
  }

  public static String textOrNull(JsonNode node, String key, String where) {
    JsonNode value = node.get(key);
    if (value == null) {
      return null;
    }
    if (!value.isTextual()) {
      throw new IllegalArgumentException(where + "." + key + " is " + value + ", expected text");
    }
    return value.textValue();
  }

  public static Double numberOrNull(JsonNode node, String key, String where) {
    JsonNode value = node.get(key);
    if (value == null) {
      return null;
    }
    if (!value.isNumber() || !Double.isFinite(value.doubleValue())) {
      throw new IllegalArgumentException(
          where + "." + key + " is " + value + ", expected a number");
    }
    return value.doubleValue();
  }

  public static double number(JsonNode node, String key, String where) {
    Double value = numberOrNull(node, key, where);
    if (value == null) {
      throw new IllegalArgumentException(where + " needs the number " + key);
    }
    return value;
  }

  public static boolean flag(JsonNode node, String key, String where) {
    JsonNode value = node.get(key);
    if (value == null || !value.isBoolean()) {
      throw new IllegalArgumentException(where + " needs " + key + ", true or false");
    }
    return value.booleanValue();
  }

  public static List<JsonNode> objects(JsonNode node, String key, String where) {
    List<JsonNode> items = new ArrayList<>();
    JsonNode list = node.get(key);
    if (list == null) {
      return items;
    }
    if (!list.isArray()) {
      throw new IllegalArgumentException(where + key + " is " + list + ", expected a list");
    }
    for (JsonNode item : list) {
      if (!item.isObject()) {
        throw new IllegalArgumentException(where + key + " holds " + item + ", expected objects");
      }
      items.add(item);
    }
    return items;
  }

  public static List<String> texts(JsonNode node, String key, String where) {
    List<String> texts = new ArrayList<>();
    for (JsonNode item : list(node, key, where)) {
      if (!item.isTextual()) {
        throw new IllegalArgumentException(
            where + "." + key + " holds " + item + ", expected text");
      }
      texts.add(item.textValue());
    }
    return texts;
  }

  public static List<Double> numbers(JsonNode node, String key, String where) {
    List<Double> numbers = new ArrayList<>();
    for (JsonNode item : list(node, key, where)) {
      if (!item.isNumber() || !Double.isFinite(item.doubleValue())) {
        throw new IllegalArgumentException(
            where + "." + key + " holds " + item + ", expected numbers");
      }
      numbers.add(item.doubleValue());
    }
    return numbers;
  }

  private static JsonNode list(JsonNode node, String key, String where) {
    JsonNode list = node.get(key);
    if (list == null) {
      return MAPPER.createArrayNode();
    }
    if (!list.isArray()) {
      throw new IllegalArgumentException(where + "." + key + " is " + list + ", expected a list");
    }
    return list;
  }
}
