package firstamp.alarm;

import firstamp.model.JobSheet;
import firstamp.model.text.Worded;
import firstamp.model.text.Wording;
import firstamp.model.text.Wording.Phrase;
import java.util.List;
import java.util.stream.Collectors;

/**
 * What stays dangerous once the switch is open: it opens the supply side only.
 *
 * <p>Only a set that is fed across its reservoir has its plug out; where a plug may be in the wall
 * it is taken to be.
 */
public final class OffWords {
  private OffWords() {}

  /** Whether a plug may be in the wall although the switch is open. */
  public static boolean plugIn(JobSheet sheet) {
    JobSheet.Supply supply = sheet.supply();
    return supply != null
        && "mains-transformer".equals(supply.kind())
        && !"reservoir-fed".equals(supply.probeSits());
  }

  /** Whether the box sits at a reservoir that the open switch leaves charged. */
  public static boolean atReservoir(JobSheet sheet) {
    String sits = sheet.supply() == null ? null : sheet.supply().probeSits();
    // Where a mains set does not say it, the box is taken to sit before the reservoir.
    return plugIn(sheet) && (sits == null || sits.endsWith("-reservoir"));
  }

  /** The sentences behind every off; empty where nothing stays live. */
  public static String after(JobSheet sheet) {
    return keys(sheet).stream().map(AlarmWords.ENGLISH::say).collect(Collectors.joining(" "));
  }

  /** The same before any language; null where nothing stays live. */
  public static Worded words(JobSheet sheet) {
    List<Phrase> phrases = keys(sheet).stream().map(key -> new Phrase(key)).toList();
    return phrases.isEmpty() ? null : new Worded(AlarmWords.BUNDLE, new Wording(phrases));
  }

  /** Their keys. */
  static List<String> keys(JobSheet sheet) {
    if (!plugIn(sheet)) {
      return List.of();
    }
    return atReservoir(sheet) ? List.of("plug", "reservoir") : List.of("plug");
  }
}
