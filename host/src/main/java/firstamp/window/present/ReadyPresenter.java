package firstamp.window.present;

import firstamp.account.NotWatchedWords;
import firstamp.model.JobSheet;
import firstamp.model.limits.Coverage;
import firstamp.model.text.Worded;
import firstamp.sheet.SheetWarnings;
import firstamp.window.words.Numbers;
import firstamp.window.words.Words;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Words of the page before a power-up: what will be watched, what will not, what to clip where. */
public final class ReadyPresenter {
  private static final Pattern ENTRY = Pattern.compile("(limits|supply)\\.[A-Za-z0-9]+");

  private final Words words;
  private final Numbers numbers;

  public ReadyPresenter(Words words, Numbers numbers) {
    this.words = words;
    this.numbers = numbers;
  }

  /** What will be watched: the supply and the rest in one line, then a line per rail. */
  public List<String> watched(JobSheet sheet) {
    Map<Integer, List<String>> byRail = new TreeMap<>();
    for (Coverage.Item item : new Coverage(sheet, false).items()) {
      byRail.computeIfAbsent(item.rail(), rail -> new ArrayList<>()).add(what(item));
    }
    List<String> lines = new ArrayList<>();
    byRail.forEach(
        (rail, rules) ->
            lines.add(
                rail == 0
                    ? words.get("ready.watched", String.join(", ", rules))
                    : words.get(
                        "ready.watchedRail",
                        sheet.rail(rail) == null
                            ? words.get("channel.R" + rail)
                            : sheet.rail(rail).name(),
                        String.join(", ", rules))));
    return lines;
  }

  /** A rule that watches supply and rails alike is named after the supply in the supply's line. */
  private String what(Coverage.Item item) {
    String id = item.rule().id();
    String plain = words.getOr("watch." + id, id);
    return item.rail() == 0 ? words.getOr("watch.supply." + id, plain) : plain;
  }

  /** What will not, and why; empty = everything is. */
  public String notWatched(JobSheet sheet) {
    return new NotWatchedWords(words.locale())
        .say(new Coverage(sheet, false).notWatched(), sheet, false);
  }

  /** What should be said all the same, entries by the names that the form gives them. */
  public List<String> warnings(JobSheet sheet) {
    List<String> lines = new ArrayList<>();
    for (Worded warning : SheetWarnings.of(sheet)) {
      lines.add(
          ENTRY
              .matcher(warning.in(words.locale()))
              .replaceAll(
                  match ->
                      Matcher.quoteReplacement(
                          words.getOr("field." + match.group(), match.group()))));
    }
    return lines;
  }

  /** Where each clip goes, a line each. */
  public List<String> clips(JobSheet sheet) {
    List<String> lines = new ArrayList<>();
    lines.add(words.get("ready.clips.off"));
    lines.add(words.get("ready.clips.module." + sheet.set().chassis()));
    lines.add(words.get("ready.clips.chassis"));
    for (JobSheet.Rail rail : sheet.rails()) {
      lines.add(
          rail.nominalV() == null
              ? words.get("ready.clips.railOpen", rail.input(), rail.name())
              : words.get(
                  "ready.clips.rail",
                  rail.input(),
                  rail.name(),
                  numbers.volts(rail.nominalV()).toString()));
    }
    if (sheet.levels() != null) {
      lines.add(words.get("ready.clips.head"));
      lines.add(words.get("ready.clips.meter"));
    }
    return lines;
  }
}
