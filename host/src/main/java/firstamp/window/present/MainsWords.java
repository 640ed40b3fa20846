package firstamp.window.present;

import firstamp.alarm.OffWords;
import firstamp.model.JobSheet;
import firstamp.window.words.Words;

/** What stays live or charged once the switch is open. */
final class MainsWords {
  private final Words words;

  MainsWords(Words words) {
    this.words = words;
  }

  /** Where a plug may be in the wall, opening the switch leaves the mains side live. */
  String of(JobSheet sheet) {
    if (!OffWords.plugIn(sheet)) {
      return "";
    }
    return OffWords.atReservoir(sheet)
        ? join(words.get("sentence.mains"), words.get("sentence.reservoir"))
        : words.get("sentence.mains");
  }

  /** Two sentences, each once. */
  static String join(String one, String other) {
    // The text of an alarm that switched off says it already.
    return (one.contains(other) ? one : one + " " + other).trim();
  }
}
