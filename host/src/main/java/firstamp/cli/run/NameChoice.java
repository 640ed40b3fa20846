package firstamp.cli.run;

import firstamp.cli.output.Said;
import firstamp.model.text.Worded;
import firstamp.sheet.SpellingSuggestion;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** Says that a name is not there: the nearest one first, then all under what they concern. */
public final class NameChoice {
  private static final int COLUMNS = 80;
  private static final String INDENT = "    ";

  private NameChoice() {}

  /**
   * The message.
   *
   * @param what of which kind the name was to be
   * @param name that is not there
   * @param groups names under what they concern; an empty heading is left out
   */
  public static Worded text(Worded what, String name, Map<String, List<String>> groups) {
    List<String> all = new ArrayList<>();
    groups.values().forEach(all::addAll);
    Object list = "";
    for (Map.Entry<String, List<String>> group : groups.entrySet()) {
      String lines = "\n" + String.join("\n", wrapped(group.getValue()));
      list =
          group.getKey().isEmpty()
              ? lines
              : Said.of("name.group", list, Said.of("name.group." + group.getKey()), lines);
    }
    return Said.of("name.none", what, name, SpellingSuggestion.to(name, all), list);
  }

  private static List<String> wrapped(List<String> names) {
    List<String> lines = new ArrayList<>();
    StringBuilder line = new StringBuilder(INDENT);
    for (String name : names) {
      boolean first = line.length() == INDENT.length();
      if (!first && line.length() + 1 + name.length() > COLUMNS) {
        lines.add(line.toString());
        line = new StringBuilder(INDENT);
        first = true;
      }
      line.append(first ? "" : " ").append(name);
    }
    lines.add(line.toString());
    return lines;
  }
}
