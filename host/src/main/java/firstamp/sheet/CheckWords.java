package firstamp.sheet;

import firstamp.model.JobSheet;
import firstamp.model.NotWatched;
import firstamp.model.Rest;
import firstamp.model.RuleId;
import firstamp.model.limits.Coverage;
import firstamp.model.text.Phrases;
import firstamp.model.text.Worded;
import firstamp.model.text.Wording.Phrase;

/** Names of what is watched or not, and from when on, in plain words. */
public final class CheckWords {
  private static final String BUNDLE = "firstamp.sheet.check";
  private static final String MISSING = " is not on the sheet";
  private static final Phrases KEYS = new Phrases(BUNDLE);

  private CheckWords() {}

  static Worded say(String key, Object... values) {
    return Worded.of(BUNDLE, key, values);
  }

  /** What is not watched and why, as one line; what has no name stays as it is. */
  public static Worded line(NotWatched gap) {
    return say("line", what(gap.what()), why(gap.why()));
  }

  private static Object what(String what) {
    int space = what.lastIndexOf(' ');
    String last = what.substring(space + 1);
    boolean numbered = space > 0 && last.matches("[0-3]");
    String name = numbered ? what.substring(0, space) : what;
    if (RuleId.of(name) != null) {
      return new Phrase(name, of(numbered ? last : ""));
    }
    String key = "what." + name.replace(' ', '-');
    return KEYS.has(key) ? new Phrase(key, last) : what;
  }

  private static Object of(String rail) {
    if (rail.isEmpty()) {
      return "";
    }
    return rail.equals("0") ? new Phrase("of.supply") : new Phrase("of", rail);
  }

  private static Object why(String why) {
    String key = "why." + why.replace(' ', '-');
    if (KEYS.has(key)) {
      return new Phrase(key);
    }
    return why.endsWith(MISSING)
        ? new Phrase("why.field", why.substring(0, why.length() - MISSING.length()))
        : why;
  }

  /** From when on a rule is judged, with a comma before it; empty = from switching on. */
  static Object from(JobSheet sheet, Coverage.Item item) {
    Rest rest = item.rule().rest();
    double ms = rest.untilMs(sheet, item.rule(), item.rail());
    // A set that draws nothing has its time in its own sentence.
    if (ms == 0 || rest == Rest.AFTER || item.rule() == RuleId.RAIL_LATE) {
      return "";
    }
    return new Phrase(rest == Rest.CHARGED ? "from.charged" : "from", ms);
  }
}
