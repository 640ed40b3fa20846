package firstamp.sheet;

import firstamp.model.text.Wording.Phrase;
import java.util.List;
import java.util.Map;

/**
 * One value of the JSON text with its place.
 *
 * @param field path from the top, for example {@code rails[0].nominalV}
 * @param line from 1
 * @param column from 1
 * @param value a {@code Map<String, Node>}, {@code List<Node>}, String, Double, Boolean or null
 */
record Node(String field, int line, int column, Object value) {

  /** Instead of a value: its key is none of a sheet. */
  static final Phrase UNKNOWN_KEY = new Phrase("unknown-key");

  boolean isObject() {
    return value instanceof Map;
  }

  boolean isList() {
    return value instanceof List;
  }

  @SuppressWarnings("unchecked") // made by JsonTree, which puts nothing else into a map
  Map<String, Node> members() {
    return (Map<String, Node>) value;
  }

  @SuppressWarnings("unchecked") // likewise
  List<Node> items() {
    return (List<Node>) value;
  }

  /** The value as it is shown in an error. */
  Object shown() {
    if (value == UNKNOWN_KEY) {
      return UNKNOWN_KEY;
    }
    if (isObject() || isList()) {
      return new Phrase(isObject() ? "object" : "list");
    }
    if (value instanceof Double number && number == Math.rint(number) && Math.abs(number) < 1e15) {
      return Long.toString(number.longValue());
    }
    return value instanceof String text ? '"' + text + '"' : String.valueOf(value);
  }
}
