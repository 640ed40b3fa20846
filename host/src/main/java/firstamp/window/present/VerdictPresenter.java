package firstamp.window.present;

import firstamp.account.Comparison;
import firstamp.account.NotWatchedWords;
import firstamp.account.Verdict;
import firstamp.account.VerdictSentence;
import firstamp.app.Desk;
import firstamp.model.JobSheet;
import firstamp.model.Summary;
import firstamp.window.widgets.Tone;
import firstamp.window.words.Numbers;
import firstamp.window.words.Outcomes;
import firstamp.window.words.Spoken;
import firstamp.window.words.Words;
import java.util.ArrayList;
import java.util.List;

/** What a power-up showed, in sentences; what changed since an earlier one. Without state. */
public final class VerdictPresenter {
  private static final int MOST_CHANGES = 6;

  private final Words words;
  private final Numbers numbers;
  private final Spoken spoken;
  private final HomePresenter home;

  public VerdictPresenter(Words words, Numbers numbers, HomePresenter home) {
    this.words = words;
    this.numbers = numbers;
    this.spoken = new Spoken(words.locale());
    this.home = home;
  }

  /** Headline: never the word "normal". */
  public String headline(Summary summary, Verdict verdict) {
    return Outcomes.head(words, numbers, summary, verdict);
  }

  public Tone tone(Summary summary) {
    return switch (summary.outcome()) {
      case "tripped" -> Tone.ALARM;
      case "normal", "interrupted" -> Tone.PLAIN;
      default -> Tone.CAUTION;
    };
  }

  /** The sentences, most important first. */
  public List<String> sentences(Verdict verdict, Summary summary, JobSheet sheet) {
    List<String> lines = new ArrayList<>();
    for (VerdictSentence sentence : verdict.sentences()) {
      switch (sentence.key()) {
        case "not.watched" ->
            lines.add(
                words.get(
                    "verdict.notWatched",
                    new NotWatchedWords(words.locale()).say(summary.notWatched(), sheet, false)));
        default -> lines.add(spoken.verdict(sentence));
      }
    }
    return lines;
  }

  /** What changed since an earlier power-up, a line each. */
  public List<String> changes(Desk.Against against, JobSheet sheet) {
    List<String> lines = new ArrayList<>();
    lines.add(
        words.get(
            against.earlier().knownGood() ? "verdict.againstGood" : "verdict.againstLast",
            String.valueOf(against.earlier().entry().number()),
            home.date(against.earlier().entry().startedEpochMs())));
    int changed = 0;
    for (Comparison.Difference each : against.comparison().differences()) {
      if (each.significant() && ++changed <= MOST_CHANGES) {
        lines.add(
            words.get(
                "verdict.change",
                spoken.figure(each.figure(), each.rail(), sheet),
                spoken.value(each.before(), each.valueUnit()),
                spoken.value(each.after(), each.valueUnit())));
      }
    }
    if (changed == 0) {
      lines.add(words.get("verdict.noChange"));
    } else if (changed > MOST_CHANGES) {
      lines.add(words.get("others.more", changed - MOST_CHANGES));
    }
    return lines;
  }
}
