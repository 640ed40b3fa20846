package firstamp.sheet;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.core.json.JsonReadFeature;
import firstamp.model.text.JsonWords;
import firstamp.model.text.Wording.Phrase;
import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Reads JSON text into a tree in which every value knows its place. */
final class JsonTree {
  private static final StreamReadConstraints CONSTRAINTS =
      StreamReadConstraints.builder()
          .maxDocumentLength(1_000_000)
          .maxNestingDepth(32)
          .maxStringLength(10_000)
          .maxNameLength(200)
          .maxNumberLength(40)
          .build();

  /** NaN is accepted here so that it can be refused by the name of its field. */
  private static final JsonFactory FACTORY =
      JsonFactory.builder()
          .streamReadConstraints(CONSTRAINTS)
          .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
          .enable(JsonReadFeature.ALLOW_NON_NUMERIC_NUMBERS)
          .build();

  private final String file;

  private JsonTree(String file) {
    this.file = file;
  }

  static Node read(String file, String text) throws SheetException {
    return new JsonTree(file).read(text);
  }

  private Node read(String text) throws SheetException {
    if (text.length() > CONSTRAINTS.getMaxDocumentLength()) {
      throw new SheetException(
          file,
          0,
          0,
          "",
          new Phrase("long.text", text.length()),
          new Phrase("most", CONSTRAINTS.getMaxDocumentLength()),
          new Phrase("right-file"));
    }
    try (JsonParser parser = FACTORY.createParser(text)) {
      if (parser.nextToken() == null) {
        throw new SheetException(
            file, 1, 1, "", new Phrase("empty"), new Phrase("sheet"), new Phrase("readme"));
      }
      Node top = value(parser, "");
      if (parser.nextToken() != null) {
        JsonLocation place = parser.currentTokenLocation();
        throw new SheetException(
            file,
            place.getLineNr(),
            place.getColumnNr(),
            "",
            new Phrase("more"),
            new Phrase("one-object"),
            new Phrase("delete"));
      }
      return top;
    } catch (JsonProcessingException e) {
      JsonLocation place = e.getLocation();
      throw new SheetException(
          file,
          place == null ? 0 : place.getLineNr(),
          place == null ? 0 : place.getColumnNr(),
          "",
          new Phrase("unreadable", JsonWords.worded(e.getOriginalMessage())),
          new Phrase("json"),
          new Phrase("look-at"));
    } catch (IOException e) {
      throw new IllegalStateException("reading from a string cannot fail", e);
    }
  }

  private Node value(JsonParser parser, String field) throws IOException, SheetException {
    JsonLocation place = parser.currentTokenLocation();
    JsonToken token = parser.currentToken();
    Object value =
        switch (token) {
          case START_OBJECT -> object(parser, field);
          case START_ARRAY -> list(parser, field);
          case VALUE_STRING -> parser.getText();
          case VALUE_TRUE -> Boolean.TRUE;
          case VALUE_FALSE -> Boolean.FALSE;
          case VALUE_NUMBER_INT, VALUE_NUMBER_FLOAT -> number(parser);
          default -> null;
        };
    return new Node(field, place.getLineNr(), place.getColumnNr(), value);
  }

  /**
   * What a double cannot hold (1e999) comes as Infinity and is refused by the name of its field.
   */
  private static Double number(JsonParser parser) throws IOException {
    return parser.getDoubleValue();
  }

  private Map<String, Node> object(JsonParser parser, String field)
      throws IOException, SheetException {
    Map<String, Node> members = new LinkedHashMap<>();
    while (parser.nextToken() != JsonToken.END_OBJECT) {
      String name = parser.currentName();
      parser.nextToken();
      members.put(name, value(parser, field.isEmpty() ? name : field + "." + name));
    }
    return members;
  }

  private List<Node> list(JsonParser parser, String field) throws IOException, SheetException {
    List<Node> items = new ArrayList<>();
    while (parser.nextToken() != JsonToken.END_ARRAY) {
      items.add(value(parser, field + "[" + items.size() + "]"));
    }
    return items;
  }
}
