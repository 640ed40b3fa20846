package firstamp.account;

import firstamp.model.Alarm;
import java.util.List;

/**
 * One sentence of a verdict, or a few that belong together. {@link VerdictWords} says it in a
 * language.
 *
 * @param importance 0 = our own clips, before all; 1 = first of what was found; from 8 on it is
 *     only a record
 * @param key of the text
 * @param rail 1 to 3, 0 = none
 * @param figures that go into it: written out with their unit, names, or phrases of the bundle
 * @param alarm that it tells, null = a sentence of the verdict's own
 */
public record VerdictSentence(
    int importance, String key, int rail, List<Object> figures, Alarm alarm) {
  /** Copies the list. */
  public VerdictSentence {
    figures = List.copyOf(figures);
  }

  /** In English. */
  public String text() {
    return VerdictWords.ENGLISH.of(this);
  }
}
