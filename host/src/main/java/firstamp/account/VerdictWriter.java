package firstamp.account;

import java.text.MessageFormat;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.ResourceBundle;
import java.util.function.Predicate;

/** Collects the sentences of a verdict, taken out of the bundle. Not thread-safe. */
final class VerdictWriter {
  private final ResourceBundle bundle =
      ResourceBundle.getBundle("firstamp.account.verdict", Locale.ROOT);
  private final List<VerdictSentence> sentences = new ArrayList<>();

  /** Whether there is a sentence of at least this importance. */
  boolean said(int importance) {
    return sentences.stream().anyMatch(sentence -> sentence.importance() <= importance);
  }

  void say(int importance, String key, int rail, String... figures) {
    String pattern = bundle.getString(key);
    String text = new MessageFormat(pattern, Locale.ROOT).format(figures);
    sentences.add(new VerdictSentence(importance, key, rail, text));
  }

  /** Withdraws sentences that were added too early. */
  void takeOut(Predicate<VerdictSentence> which) {
    sentences.removeIf(which);
  }

  /** All sentences, most important first; equal ones in the order in which they were added. */
  List<VerdictSentence> byImportance() {
    return sentences.stream().sorted(Comparator.comparingInt(VerdictSentence::importance)).toList();
  }
}
