package firstamp.sheet;

import firstamp.model.JobSheet;
import firstamp.model.NotWatched;
import firstamp.model.Rest;
import firstamp.model.RuleId;
import firstamp.model.limits.Coverage;
import firstamp.model.text.Numbers;
import java.text.MessageFormat;
import java.util.Locale;
import java.util.ResourceBundle;

/** Names of what is watched or not, and from when on, in plain words. */
public final class CheckWords {
  private static final ResourceBundle WORDS =
      ResourceBundle.getBundle("firstamp.sheet.check", Locale.ROOT);

  private CheckWords() {}

  /** What is not watched and why, as one line; what has no rule's name stays as it is. */
  public static String line(NotWatched gap) {
    int space = gap.what().lastIndexOf(' ');
    String rule = space > 0 ? gap.what().substring(0, space) : gap.what();
    if (RuleId.of(rule) == null) {
      return gap.what() + ": " + gap.why();
    }
    String rail = space > 0 ? gap.what().substring(space + 1) : "";
    return MessageFormat.format(WORDS.getString(rule), of(rail)) + ": " + gap.why();
  }

  private static String of(String rail) {
    if (rail.isEmpty()) {
      return "";
    }
    return rail.equals("0")
        ? WORDS.getString("of.supply")
        : MessageFormat.format(WORDS.getString("of"), rail);
  }

  /** From when on a rule is judged, with a comma before it; empty = from switching on. */
  static String from(JobSheet sheet, Coverage.Item item) {
    Rest rest = item.rule().rest();
    double ms = rest.untilMs(sheet, item.rule(), item.rail());
    // A set that draws nothing has its time in its own sentence.
    if (ms == 0 || rest == Rest.AFTER || item.rule() == RuleId.RAIL_LATE) {
      return "";
    }
    String key = rest == Rest.CHARGED ? "from.charged" : "from";
    return ", " + MessageFormat.format(WORDS.getString(key), Numbers.text(ms));
  }
}
