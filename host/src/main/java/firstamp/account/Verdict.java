package firstamp.account;

import firstamp.analysis.figures.Evidence;
import firstamp.model.Alarm;
import firstamp.model.JobSheet;
import firstamp.model.NotWatched;
import firstamp.model.Summary;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import java.util.stream.Stream;

/**
 * What one power-up showed, in sentences ordered by importance, each with its figure and what to
 * look at next; what was not watched is part of it.
 *
 * @param sentences most important first, never empty
 */
public record Verdict(List<VerdictSentence> sentences) {
  private static final Map<String, String> SAME_AS_RULE =
      Map.of(
          "rail.late", "rail-late",
          "rail.outside", "rail-window",
          "head.low", "head-below-meter",
          "head.floor", "head-below-meter",
          "look.short", "short");

  /** Copies the list. */
  public Verdict {
    sentences = List.copyOf(sentences);
  }

  /**
   * The short in this power-up, null if there was none; a supply in current limit does not count.
   */
  public static Alarm shortOf(List<Alarm> alarms) {
    return EndVerdict.shortOf(alarms);
  }

  /**
   * Whether it ran without an alarm, without being switched off and without anything to look at.
   */
  public boolean fine() {
    return sentences.stream().anyMatch(sentence -> sentence.key().equals("ran.fine"));
  }

  /**
   * Judges.
   *
   * @param sheet effective
   * @param summary of the run: alarms, outcome, what was not watched
   * @param evidence collected in it
   */
  public static Verdict of(JobSheet sheet, Summary summary, Evidence evidence) {
    VerdictWriter writer = new VerdictWriter();
    alarms(summary, writer);
    new LookVerdict(evidence, writer).judge();
    if (evidence.onMs() != null && evidence.onMs() > 0) {
      new SupplyVerdict(sheet, evidence, writer).judge();
      new RailVerdict(sheet, evidence, writer).judge();
      new LevelVerdict(sheet, evidence, writer).judge();
    }
    writer.takeOut(sentence -> saidByAlarm(sentence, summary));
    writer.takeOut(new Resting(sheet, summary)::rests);
    new EndVerdict(sheet, summary, evidence, writer).judge();
    notWatched(summary.notWatched(), writer);
    return new Verdict(writer.byImportance());
  }

  /** Each alarm, and behind it what followed from it. */
  private static void alarms(Summary summary, VerdictWriter writer) {
    List<Alarm> all = summary.alarms() == null ? List.of() : summary.alarms();
    Alarm found = summary.tripCause() == null ? null : shortOf(all);
    // The sentence about the short already covers its over-current, with the highest current.
    Predicate<Alarm> told =
        alarm -> found != null && (alarm == found || alarm.rule().equals("over-current"));
    for (Alarm top : all) {
      if (top.foldedUnder() == 0) {
        Stream<Alarm> under = all.stream().filter(one -> one.foldedUnder() == top.number());
        Stream.concat(Stream.of(top), under)
            .filter(told.negate())
            .forEach(alarm -> writer.alarm(1, alarm));
      }
    }
  }

  /** Whether an alarm on the same rail already reports the same. */
  private static boolean saidByAlarm(VerdictSentence sentence, Summary summary) {
    String rule = SAME_AS_RULE.get(sentence.key());
    return rule != null
        && summary.alarms() != null
        && summary.alarms().stream()
            .anyMatch(alarm -> alarm.rule().equals(rule) && alarm.rail() == sentence.rail());
  }

  /** All sentences in one paragraph. */
  public String text() {
    StringBuilder text = new StringBuilder();
    for (VerdictSentence sentence : sentences) {
      text.append(text.isEmpty() ? "" : " ").append(sentence.text());
    }
    return text.toString();
  }

  private static void notWatched(List<NotWatched> things, VerdictWriter writer) {
    if (things == null || things.isEmpty()) {
      writer.say(10, "all.watched", 0);
      return;
    }
    StringBuilder list = new StringBuilder();
    for (NotWatched thing : things) {
      list.append(list.isEmpty() ? "" : ", ").append(thing.what());
      list.append(" (").append(thing.why()).append(')');
    }
    writer.say(10, "not.watched", 0, list.toString());
  }
}
