package firstamp.sheet;

import firstamp.model.text.Wording.Phrase;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** One object of the sheet, checked against its keys. */
final class Fields {
  private final String file;
  private final Node node;
  private final Map<String, Object> keys;

  private Fields(String file, Node node, Map<String, Object> keys) {
    this.file = file;
    this.node = node;
    this.keys = keys;
  }

  /** Checks that it is an object and has no unknown key. */
  static Fields of(String file, Node node, Map<String, Object> keys) throws SheetException {
    if (!node.isObject()) {
      throw problem(file, node, new Phrase("object"), new Phrase("braces"));
    }
    for (Map.Entry<String, Node> member : node.members().entrySet()) {
      if (!keys.containsKey(member.getKey())) {
        throw problem(
            file,
            new Node(
                member.getValue().field(),
                member.getValue().line(),
                member.getValue().column(),
                Node.UNKNOWN_KEY),
            new Phrase("one-of", String.join(", ", keys.keySet())),
            new Phrase("meant", SpellingSuggestion.to(member.getKey(), keys.keySet())));
      }
    }
    return new Fields(file, node, keys);
  }

  static SheetException problem(String file, Node node, Object allowed, Object remedy) {
    return new SheetException(
        file, node.line(), node.column(), node.field(), node.shown(), allowed, remedy);
  }

  boolean has(String key) {
    return node.members().containsKey(key);
  }

  Node at(String key) {
    return node.members().get(key);
  }

  /** The object under a key, null = not said. */
  Fields object(String key, Map<String, Object> inner) throws SheetException {
    return has(key) ? of(file, at(key), inner) : null;
  }

  /** The items of a list, empty = not said. */
  List<Node> items(String key) throws SheetException {
    if (!has(key)) {
      return List.of();
    }
    if (!at(key).isList()) {
      throw problem(file, at(key), new Phrase("list"), new Phrase("brackets"));
    }
    return at(key).items();
  }

  List<String> texts(String key) throws SheetException {
    List<String> texts = new ArrayList<>();
    for (Node item : items(key)) {
      texts.add(text(file, item));
    }
    return texts;
  }

  /** A number within its range, null = not said. */
  Double number(String key) throws SheetException {
    return has(key) ? number(file, at(key), (Range) keys.get(key)) : null;
  }

  static Double number(String file, Node node, Range range) throws SheetException {
    if (!(node.value() instanceof Double number)) {
      throw problem(file, node, new Phrase("number", range.phrase()), new Phrase("no-unit"));
    }
    if (!range.holds(number)) {
      throw problem(file, node, range.phrase(), new Phrase("in-range"));
    }
    return number;
  }

  Integer whole(String key) throws SheetException {
    Double number = number(key);
    if (number == null) {
      return null;
    }
    if (number != Math.rint(number)) {
      throw problem(
          file,
          at(key),
          new Phrase("whole-number", ((Range) keys.get(key)).phrase()),
          new Phrase("no-point"));
    }
    return (int) number.doubleValue();
  }

  Boolean flag(String key) throws SheetException {
    if (!has(key)) {
      return null;
    }
    if (!(at(key).value() instanceof Boolean flag)) {
      throw problem(file, at(key), new Phrase("truth"), new Phrase("no-quotes"));
    }
    return flag;
  }

  String text(String key) throws SheetException {
    return has(key) ? text(file, at(key)) : null;
  }

  static String text(String file, Node item) throws SheetException {
    if (!(item.value() instanceof String text)
        || text.isBlank()
        || text.length() > Keys.LONGEST_TEXT) {
      throw problem(file, item, new Phrase("name", Keys.LONGEST_TEXT), new Phrase("quotes"));
    }
    return text;
  }

  /** One of the words of the key, null = not said. */
  String word(String key) throws SheetException {
    if (!has(key)) {
      return null;
    }
    @SuppressWarnings("unchecked") // Keys puts lists of words there
    List<String> words = (List<String>) keys.get(key);
    if (!(at(key).value() instanceof String text) || !words.contains(text)) {
      Phrase remedy =
          at(key).value() instanceof String text
              ? new Phrase("meant", Synonyms.meant(text, words))
              : new Phrase("quotes.one");
      throw problem(file, at(key), new Phrase("one-of", String.join(", ", words)), remedy);
    }
    return text;
  }

  /** Refuses an object in which a key is missing. */
  void needs(String key, String example) throws SheetException {
    if (!has(key)) {
      String place = node.field().isEmpty() ? key : node.field() + "." + key;
      throw new SheetException(
          file,
          node.line(),
          node.column(),
          place,
          new Phrase("missing"),
          new Phrase("said"),
          new Phrase("add", example));
    }
  }
}
