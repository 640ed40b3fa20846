package firstamp.app;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import firstamp.sheet.Defaults;
import firstamp.sheet.SheetException;
import firstamp.sheet.SheetField;
import firstamp.sheet.SheetReader;
import firstamp.sheet.SheetWriter;
import java.util.ArrayList;
import java.util.List;

/**
 * A job sheet being filled in: every entry by its place, its problem, and what is taken for an
 * entry that is left empty. What the form does not know (signal path, unknown wires) is kept as it
 * is. Not thread-safe.
 *
 * <p>Places read like {@code supply.nominalV}, {@code rail2.name}, {@code rules.short.onDelayMs}.
 */
public final class SheetEntries {
  private static final ObjectMapper MAPPER = new ObjectMapper();
  private static final String RAIL = "rail";

  private final ObjectNode root;
  private JsonNode filled = MAPPER.createObjectNode();
  private SheetException problem;

  private SheetEntries(ObjectNode root) {
    this.root = root;
    look();
  }

  /** A form over a text; an empty one where the text is none. */
  public static SheetEntries of(String json) {
    JsonNode node = tree(json);
    ObjectNode root = node instanceof ObjectNode object ? object : MAPPER.createObjectNode();
    if (!root.has("sheet")) {
      ObjectNode fresh = MAPPER.createObjectNode().put("sheet", 1);
      fresh.setAll(root);
      root = fresh;
    }
    return new SheetEntries(root);
  }

  private static JsonNode tree(String json) {
    try {
      return json == null ? null : MAPPER.readTree(json);
    } catch (JsonProcessingException notJson) {
      return null;
    }
  }

  /** Name of the set in a text, null where there is none. */
  public static String nameIn(String json) {
    JsonNode node = tree(json);
    JsonNode name = node == null ? null : node.path("set").path("name");
    return name != null && name.isTextual() ? name.asText() : null;
  }

  /** What stands at a place, empty = nothing. */
  public String value(String place) {
    return text(find(root, place));
  }

  /** What is taken where nothing stands, empty = nothing or not known yet. */
  public String whenEmpty(String place) {
    return text(find(filled, place));
  }

  private static String text(JsonNode node) {
    return node == null || node.isMissingNode() || node.isNull() ? "" : node.asText();
  }

  /** Puts a value in; blank takes it out. A part that has nothing left goes too. */
  public void set(String place, SheetField.Kind kind, String typed) {
    String text = typed == null ? "" : typed.strip();
    int dot = place.lastIndexOf('.');
    String key = place.substring(dot + 1);
    ObjectNode part = part(place.substring(0, dot), !text.isEmpty());
    if (part == null) {
      return;
    }
    if (text.isEmpty()) {
      part.remove(key);
      clean();
    } else {
      put(part, key, kind, text);
    }
    look();
  }

  private static void put(ObjectNode part, String key, SheetField.Kind kind, String text) {
    switch (kind) {
      case NUMBER -> {
        Double number = number(text);
        if (number == null) {
          // The reader of sheets says what is wrong with it.
          part.put(key, text);
        } else if (number == Math.rint(number) && Math.abs(number) < 1e15) {
          part.put(key, number.longValue());
        } else {
          part.put(key, number);
        }
      }
      case FLAG -> part.put(key, Boolean.parseBoolean(text));
      case TEXT, CHOICE -> part.put(key, text);
    }
  }

  /** A number with a point or a comma; null = none. */
  public static Double number(String text) {
    try {
      double value = Double.parseDouble(text.strip().replace(',', '.').replace('\u2212', '-'));
      return Double.isFinite(value) ? value : null;
    } catch (NumberFormatException noNumber) {
      return null;
    }
  }

  private static JsonNode find(JsonNode from, String place) {
    JsonNode at = from;
    for (String key : place.split("\\.")) {
      at = key.matches(RAIL + "[1-3]") ? rail(at, key.charAt(4) - '0') : at.path(key);
      if (at == null) {
        return null;
      }
    }
    return at;
  }

  private static ObjectNode rail(JsonNode top, int input) {
    for (JsonNode rail : top.path("rails")) {
      if (rail instanceof ObjectNode object && object.path("input").asInt() == input) {
        return object;
      }
    }
    return null;
  }

  private ObjectNode part(String place, boolean make) {
    ObjectNode at = root;
    for (String key : place.split("\\.")) {
      ObjectNode next =
          key.matches(RAIL + "[1-3]") ? rail(root, key.charAt(4) - '0') : object(at, key);
      if (next == null) {
        if (!make) {
          return null;
        }
        next = key.matches(RAIL + "[1-3]") ? addRail(key.charAt(4) - '0') : at.putObject(key);
      }
      at = next;
    }
    return at;
  }

  private static ObjectNode object(ObjectNode at, String key) {
    return at.get(key) instanceof ObjectNode object ? object : null;
  }

  /** Rails stay in the order of their clips. */
  private ObjectNode addRail(int input) {
    ArrayNode rails = root.get("rails") instanceof ArrayNode there ? there : root.putArray("rails");
    int at = 0;
    while (at < rails.size() && rails.get(at).path("input").asInt() < input) {
      at++;
    }
    return rails.insertObject(at).put("input", input);
  }

  private void clean() {
    if (root.get("rails") instanceof ArrayNode rails) {
      for (int at = rails.size() - 1; at >= 0; at--) {
        if (rails.get(at).size() <= 1) {
          rails.remove(at);
        }
      }
    }
    if (root.get("rules") instanceof ObjectNode rules) {
      dropEmpty(rules);
    }
    dropEmpty(root);
  }

  private static void dropEmpty(ObjectNode node) {
    List<String> empty = new ArrayList<>();
    node.fieldNames()
        .forEachRemaining(
            key -> {
              JsonNode part = node.get(key);
              if (part.isContainerNode() && part.isEmpty()) {
                empty.add(key);
              }
            });
    node.remove(empty);
  }

  /** Reads the entries as a sheet; keeps the problem, or the sheet with its defaults. */
  private void look() {
    try {
      filled =
          MAPPER.readTree(
              SheetWriter.write(Defaults.fill(SheetReader.parse("job sheet", json()).sheet())));
      problem = null;
    } catch (SheetException bad) {
      problem = bad;
    } catch (JsonProcessingException impossible) {
      throw new IllegalStateException("our own text can be read", impossible);
    }
  }

  /** Why it cannot be watched, null = it can. */
  public SheetException problem() {
    return problem;
  }

  /** Place of the problem in the form, empty = none in particular. */
  public String problemPlace() {
    if (problem == null) {
      return "";
    }
    String field = problem.field();
    if (field.startsWith("rails[")) {
      int index = field.charAt(6) - '0';
      int input = root.path("rails").path(index).path("input").asInt(index + 1);
      return RAIL + input + field.substring(field.indexOf(']') + 1);
    }
    return field;
  }

  public String name() {
    return value("set.name");
  }

  /** The text, ready to be kept. */
  public String json() {
    try {
      return MAPPER.writerWithDefaultPrettyPrinter().writeValueAsString(root) + "\n";
    } catch (JsonProcessingException impossible) {
      throw new IllegalStateException("a tree can always be written", impossible);
    }
  }
}
