package firstamp.locate.signal;

import firstamp.model.text.UnfitValue;
import firstamp.model.text.Worded;
import firstamp.model.text.Wording.Phrase;
import java.util.List;

/** Sentences about a lost signal, before any language. */
final class PathWords {
  private static final String BUNDLE = "firstamp.locate.path";

  private PathWords() {}

  static Worded of(String key, Object... values) {
    return Worded.of(BUNDLE, key, values);
  }

  static UnfitValue refusal(String key, Object... values) {
    return new UnfitValue(of("refused." + key, values));
  }

  /** Names in a row, with a word before the last one. */
  static Object list(List<String> names, String last) {
    if (names.isEmpty()) {
      return new Phrase("nothing");
    }
    if (names.size() == 1) {
      return names.get(0);
    }
    int end = names.size() - 1;
    return new Phrase(last, String.join(", ", names.subList(0, end)), names.get(end));
  }
}
