package firstamp.sheet;

import java.util.List;
import java.util.Locale;
import java.util.Map;

/** Words of the format that people call by another name. */
final class Synonyms {
  private static final Map<String, String> MEANT =
      Map.ofEntries(
          Map.entry("radio", "receiver"),
          Map.entry("tuner", "receiver"),
          Map.entry("tape deck", "recorder"),
          Map.entry("dictation unit", "recorder"),
          Map.entry("record player", "amplifier"),
          Map.entry("calculator", "computer"),
          Map.entry("power supply", "bench"),
          Map.entry("cells", "battery"),
          Map.entry("plug", "adaptor"),
          Map.entry("charger", "adaptor"),
          Map.entry("mains", "mains-transformer"),
          Map.entry("transformer", "mains-transformer"),
          Map.entry("plus", "positive"),
          Map.entry("+", "positive"),
          Map.entry("minus", "negative"),
          Map.entry("-", "negative"),
          Map.entry("bulb", "lamp"),
          Map.entry("beep", "alarm"),
          Map.entry("sound", "alarm"),
          Map.entry("warn", "alarm"),
          Map.entry("trip", "off"),
          Map.entry("cut", "off"),
          Map.entry("stop", "off"),
          Map.entry("urgent", "high"),
          Map.entry("bridge", "full"));

  private Synonyms() {}

  /** The word that was most likely meant: one that means the same, else the nearest spelling. */
  static String meant(String word, List<String> known) {
    String other = MEANT.get(word.trim().toLowerCase(Locale.ROOT));
    return other != null && known.contains(other) ? other : SpellingSuggestion.to(word, known);
  }
}
