package firstamp.sheet;

import java.util.List;
import java.util.Locale;
import java.util.Map;

/** What kind of set a name speaks of. */
final class SetKinds {
  private static final List<Map.Entry<String, List<String>>> WORDS =
      List.of(
          Map.entry("recorder", List.of("record", "dictat", "tape", "cassette", "reel")),
          Map.entry("receiver", List.of("radio", "receiver", "tuner", "transistor set")),
          Map.entry("computer", List.of("computer", "calculator", "terminal")),
          Map.entry("amplifier", List.of("amplifier", "amp ", "preamp", "record player")));

  private SetKinds() {}

  /** Null = the name does not say, or says two things. */
  static String of(String name) {
    if (name == null) {
      return null;
    }
    String words = (name + ' ').toLowerCase(Locale.ROOT);
    if (words.contains("record player")) {
      return "amplifier";
    }
    String found = null;
    for (Map.Entry<String, List<String>> kind : WORDS) {
      if (kind.getValue().stream().anyMatch(words::contains)) {
        if (found != null) {
          return null;
        }
        found = kind.getKey();
      }
    }
    return found;
  }
}
