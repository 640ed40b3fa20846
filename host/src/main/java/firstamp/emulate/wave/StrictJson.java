package firstamp.emulate.wave;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import firstamp.model.text.Wording.Phrase;
import java.io.IOException;

/** Members of a JSON text taken one after the other; errors give file and line. */
final class StrictJson {
  private final String name;
  private final JsonParser json;

  StrictJson(String name, JsonParser json) {
    this.name = name;
    this.json = json;
  }

  /** Takes one member; the value is the current token. */
  interface Member {
    void take(String key) throws IOException;
  }

  /** Takes one element of an array. */
  interface Element {
    void take() throws IOException;
  }

  /** The whole text: one object. */
  void whole(Member member) throws IOException {
    json.nextToken();
    object(new Phrase("the-file"), member);
    if (json.nextToken() != null) {
      throw bad(new Phrase("the-file"), new Phrase("continues"), new Phrase("one-object"));
    }
  }

  void object(Object field, Member member) throws IOException {
    if (json.currentToken() != JsonToken.START_OBJECT) {
      throw bad(field, found(), new Phrase("an-object"));
    }
    while (json.nextToken() != JsonToken.END_OBJECT) {
      String key = json.currentName();
      json.nextToken();
      member.take(key);
    }
  }

  void array(String field, Element element) throws IOException {
    if (json.currentToken() != JsonToken.START_ARRAY) {
      throw bad(field, found(), new Phrase("an-array"));
    }
    while (json.nextToken() != JsonToken.END_ARRAY) {
      element.take();
    }
  }

  int line() {
    return json.currentLocation().getLineNr();
  }

  /** The text of a string, empty for anything else. */
  String text() throws IOException {
    return json.currentToken() == JsonToken.VALUE_STRING ? json.getText() : "";
  }

  WaveformException at(int line, Phrase what) {
    return WaveformException.at(name, line, what);
  }

  double number(String field, double lowest, double highest) throws IOException {
    JsonToken token = json.currentToken();
    boolean isNumber = token == JsonToken.VALUE_NUMBER_FLOAT || token == JsonToken.VALUE_NUMBER_INT;
    double value = isNumber ? json.getDoubleValue() : Double.NaN;
    if (!(value >= lowest && value <= highest)) {
      throw bad(field, found(), new Phrase("a-number", lowest, highest));
    }
    return value;
  }

  boolean truth(String field) throws IOException {
    JsonToken token = json.currentToken();
    if (token != JsonToken.VALUE_TRUE && token != JsonToken.VALUE_FALSE) {
      throw bad(field, found(), new Phrase("true-or-false"));
    }
    return token == JsonToken.VALUE_TRUE;
  }

  Phrase found() throws IOException {
    return switch (json.currentToken()) {
      case START_OBJECT -> new Phrase("is.object");
      case START_ARRAY -> new Phrase("is.array");
      case VALUE_STRING -> new Phrase("is.text", json.getText());
      default -> new Phrase("is", json.getText());
    };
  }

  WaveformException bad(Object field, Phrase found, Object expected) {
    return at(line(), new Phrase("bad", field, found, expected));
  }

  WaveformException unknown(String field, String expected) {
    return at(line(), new Phrase("unknown", field, expected));
  }
}
