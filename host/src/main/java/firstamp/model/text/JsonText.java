package firstamp.model.text;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonLocation;
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
        throw bad("no-object");
      }
      return node;
    } catch (JsonProcessingException bad) {
      UnfitValue refused = bad("not-json", placed(bad));
      refused.initCause(bad);
      throw refused;
    }
  }

  private static Worded placed(JsonProcessingException bad) {
    Worded why = JsonWords.worded(bad.getOriginalMessage());
    JsonLocation at = bad.getLocation();
    return at == null
        ? why
        : FailureWords.say(
            "json.place", why, String.valueOf(at.getLineNr()), String.valueOf(at.getColumnNr()));
  }

  /** A part of a state file, to be named in a refusal: file, mode, point, ... */
  public static Worded part(String name) {
    return FailureWords.say("part." + name);
  }

  /** A refusal of a state file; {@code key} is one of its sentences. */
  public static UnfitValue bad(String key, Object... values) {
    return new UnfitValue(FailureWords.say("state." + key, values));
  }

  public static String write(JsonNode node) {
    return node.toPrettyString() + "\n";
  }

  /** Refuses unknown keys, so that a misspelt key is not taken for a missing one. */
  public static void onlyKeys(JsonNode node, Object where, String... known) {
    Set<String> keys = Set.of(known);
    node.fieldNames()
        .forEachRemaining(
            key -> {
              if (!keys.contains(key)) {
                throw bad("unknown-key", where, key, String.join(", ", known));
              }
            });
  }

  public static String text(JsonNode node, String key, Object where) {
    String value = textOrNull(node, key, where);
    if (value == null || value.isBlank()) {
      throw bad("needs-text", where, key);
    }
    return value;
  }

  public static String textOrNull(JsonNode node, String key, Object where) {
    JsonNode value = node.get(key);
    if (value == null) {
      return null;
    }
    if (!value.isTextual()) {
      throw bad("text", where, key, value);
    }
    return value.textValue();
  }

  public static Double numberOrNull(JsonNode node, String key, Object where) {
    JsonNode value = node.get(key);
    if (value == null) {
      return null;
    }
    if (!value.isNumber() || !Double.isFinite(value.doubleValue())) {
      throw bad("number", where, key, value);
    }
    return value.doubleValue();
  }

  public static double number(JsonNode node, String key, Object where) {
    Double value = numberOrNull(node, key, where);
    if (value == null) {
      throw bad("needs-number", where, key);
    }
    return value;
  }

  public static boolean flag(JsonNode node, String key, Object where) {
    JsonNode value = node.get(key);
    if (value == null || !value.isBoolean()) {
      throw bad("needs-flag", where, key);
    }
    return value.booleanValue();
  }

  public static List<JsonNode> objects(JsonNode node, String key) {
    List<JsonNode> items = new ArrayList<>();
    JsonNode list = node.get(key);
    if (list == null) {
      return items;
    }
    if (!list.isArray()) {
      throw bad("top-list", key, list);
    }
    for (JsonNode item : list) {
      if (!item.isObject()) {
        throw bad("objects", key, item);
      }
      items.add(item);
    }
    return items;
  }

  public static List<String> texts(JsonNode node, String key, Object where) {
    List<String> texts = new ArrayList<>();
    for (JsonNode item : list(node, key, where)) {
      if (!item.isTextual()) {
        throw bad("texts", where, key, item);
      }
      texts.add(item.textValue());
    }
    return texts;
  }

  public static List<Double> numbers(JsonNode node, String key, Object where) {
    List<Double> numbers = new ArrayList<>();
    for (JsonNode item : list(node, key, where)) {
      if (!item.isNumber() || !Double.isFinite(item.doubleValue())) {
        throw bad("numbers", where, key, item);
      }
      numbers.add(item.doubleValue());
    }
    return numbers;
  }

  private static JsonNode list(JsonNode node, String key, Object where) {
    JsonNode list = node.get(key);
    if (list == null) {
      return MAPPER.createArrayNode();
    }
    if (!list.isArray()) {
      throw bad("list", where, key, list);
    }
    return list;
  }
}
