package firstamp.account;

import firstamp.model.JobSheet;
import firstamp.model.NotWatched;
import firstamp.model.text.Phrases;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** Says in the words of the bench what was not watched, what has the same reason together. */
public final class NotWatchedWords {
  private static final String NOT_YET = "the set was not on long enough";
  private static final String SHEET = "not on the sheet";

  private final Phrases words;

  /** In this language. */
  public NotWatchedWords(Locale locale) {
    this.words = new Phrases("firstamp.account.watch", locale);
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
        (why, whats) -> parts.add(words.say("watch.group", String.join(", ", whats), why)));
    return String.join("; ", parts);
  }

  private String what(NotWatched gap, JobSheet sheet) {
    if (gap.what().endsWith(" 0")) {
      String rule = gap.what().substring(0, gap.what().length() - 2);
      return sayOr("watch.supply." + rule, sayOr("watch." + rule, rule));
    }
    int space = gap.what().lastIndexOf(' ');
    String last = gap.what().substring(space + 1);
    boolean numbered = space > 0 && last.matches("[1-3]");
    String base = numbered ? gap.what().substring(0, space) : gap.what();
    String key = "watch." + base.replace(' ', '-');
    String name = sayOr(key, base);
    if (!numbered) {
      return name;
    }
    JobSheet.Rail rail = sheet.rail(Integer.parseInt(last));
    boolean named = rail != null && rail.name() != null;
    if (base.equals("rail")) {
      return named ? rail.name() : name + " " + last;
    }
    return words.say("watch.of", name, named ? rail.name() : last);
  }

  private String why(String reason) {
    return reason.endsWith(SHEET) && !reason.startsWith("turned")
        ? words.say("why.not-on-the-sheet")
        : sayOr("why." + reason.replace(' ', '-'), reason);
  }

  private String sayOr(String key, String otherwise) {
    return words.has(key) ? words.say(key) : otherwise;
  }
}
