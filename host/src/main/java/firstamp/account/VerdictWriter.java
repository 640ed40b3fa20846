package firstamp.account;

import firstamp.model.Alarm;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.Predicate;

/** Collects the sentences of a verdict. Not thread-safe. */
final class VerdictWriter {
  private final List<VerdictSentence> sentences = new ArrayList<>();

  /** Whether there is a sentence of at least this importance. */
  boolean said(int importance) {
    return sentences.stream().anyMatch(sentence -> sentence.importance() <= importance);
  }

  void say(int importance, String key, int rail, Object... figures) {
    sentences.add(new VerdictSentence(importance, key, rail, List.of(figures), null));
  }

  /** What an alarm says is part of the verdict; of one that followed, only what was seen. */
  void alarm(int importance, Alarm alarm) {
    String key = alarm.foldedUnder() == 0 ? "alarm" : "also";
    sentences.add(new VerdictSentence(importance, key, alarm.rail(), List.of(), alarm));
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
