package firstamp.window.words;

import firstamp.model.JobSheet;
import firstamp.model.NotWatched;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Says in the words of the bench what was not watched, what has the same reason together. */
public final class NotWatchedWords {
  private static final String NOT_YET = "the set was not on long enough";
  private static final String SHEET = "not on the sheet";

  private final Words words;

  public NotWatchedWords(Words words) {
    this.words = words;
  }

  /**
   * For example "climbing current, hum (not on the job sheet); B2 (no clip)".
   *
   * @param gaps what was not watched
   * @param sheet for the names of rails
   * @param running whether the set is on: what only waits for its time is then left out
   */
  public String say(List<NotWatched> gaps, JobSheet sheet, boolean running) {
    Map<String, List<String>> byReason = new LinkedHashMap<>();
    for (NotWatched gap : gaps) {
      if (!(running && gap.why().equals(NOT_YET))) {
        byReason.computeIfAbsent(why(gap.why()), key -> new ArrayList<>()).add(what(gap, sheet));
      }
    }
    List<String> parts = new ArrayList<>();
    byReason.forEach(
        (why, whats) -> parts.add(words.get("watch.group", String.join(", ", whats), why)));
    return String.join("; ", parts);
  }

  private String what(NotWatched gap, JobSheet sheet) {
    int space = gap.what().lastIndexOf(' ');
    String last = gap.what().substring(space + 1);
    boolean numbered = space > 0 && last.matches("[1-3]");
    String base = numbered ? gap.what().substring(0, space) : gap.what();
    String key = "watch." + base.replace(' ', '-');
    String name = words.getOr(key, base);
    if (!numbered) {
      return name;
    }
    JobSheet.Rail rail = sheet.rail(Integer.parseInt(last));
    boolean named = rail != null && rail.name() != null;
    if (base.equals("rail")) {
      return named ? rail.name() : name + " " + last;
    }
    return words.get("watch.of", name, named ? rail.name() : last);
  }

  private String why(String reason) {
    return reason.endsWith(SHEET) && !reason.startsWith("turned")
        ? words.get("why.not-on-the-sheet")
        : words.getOr("why." + reason.replace(' ', '-'), reason);
  }
}
