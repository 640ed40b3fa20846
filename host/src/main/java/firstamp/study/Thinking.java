package firstamp.study;

import firstamp.locate.SheetPath;
import firstamp.locate.signal.LocateAnswer;
import firstamp.locate.wire.TriedWire;
import firstamp.log.BenchLog;
import firstamp.log.LogException;
import firstamp.log.PowerUpEntry;
import firstamp.model.JobSheet;
import firstamp.model.text.Worded;
import firstamp.sheet.SheetException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** What a power-up says about a lost signal and about a wire of unknown place, in sentences. */
public final class Thinking {
  private static final String BUNDLE = "firstamp.study.thinking";

  private Thinking() {}

  /**
   * Which wire of the sheet a label says was joined where: for labels alone, where nobody named the
   * wire and its place. Of several that fit, the longest: {@code tag 10} is not {@code tag 1}.
   *
   * @return null = none
   */
  public static TriedWire tried(JobSheet sheet, String label) {
    TriedWire longest = null;
    for (JobSheet.UnknownWire wire : sheet.unknownWires()) {
      for (JobSheet.Landing place : wire.places()) {
        TriedWire tried = new TriedWire(wire.name(), place.name());
        if (label != null
            && begins(label, tried.label())
            && (longest == null || tried.label().length() > longest.label().length())) {
          longest = tried;
        }
      }
    }
    return longest;
  }

  /** Whether a text begins with words and not with a part of one. */
  private static boolean begins(String text, String words) {
    return text.startsWith(words)
        && (text.length() == words.length()
            || !Character.isLetterOrDigit(text.codePointAt(words.length())));
  }

  /** What a logged power-up tried; null = nothing. */
  public static TriedWire tried(PowerUpEntry entry) {
    return entry.trialWire() == null ? null : new TriedWire(entry.trialWire(), entry.trialPlace());
  }

  /**
   * The sentences of a power-up; empty if nobody was searching or trying in it.
   *
   * @throws LogException the log cannot be read
   * @throws SheetException a stored sheet is none
   */
  public static List<String> sentences(BenchLog log, PowerUpStudy study, Locale locale)
      throws LogException, SheetException {
    List<String> sentences = new ArrayList<>();
    if (SheetPath.hasPath(study.sheet()) && study.searched()) {
      SearchState state = SignalSearch.of(log.find(Long.toString(study.entry().number())));
      if (!state.search().observations().isEmpty()) {
        LocateAnswer answer = state.search().answer();
        sentences.add(answer.words().in(locale));
        answer.remarks().forEach(each -> sentences.add(each.in(locale)));
      }
    }
    TriedWire tried = tried(study.entry());
    if (tried != null) {
      sentences.add(sentence(tried, compare(log, study, tried.wire())).in(locale));
    }
    return sentences;
  }

  /**
   * A trial against the last good power-up; null if there is none.
   *
   * @throws LogException the log cannot be read
   * @throws SheetException a stored sheet is none
   */
  public static TrialComparison compare(BenchLog log, PowerUpStudy trial, String wire)
      throws LogException, SheetException {
    PowerUpEntry good = TrialComparison.lastGood(log, trial.entry(), wire);
    return good == null
        ? null
        : TrialComparison.of(
            PowerUpStudy.of(log.find(Long.toString(good.number()))),
            trial,
            trial.sheet().supply().idleA());
  }

  /** Verdict of a trial in a sentence. */
  public static Worded sentence(TriedWire tried, TrialComparison comparison) {
    if (comparison == null) {
      return say("trial.alone", tried.label());
    }
    Worded verdict =
        Worded.of("firstamp.locate.wires", "verdict." + comparison.judged().verdict().id());
    return comparison.lines().isEmpty()
        ? say("trial", tried.label(), comparison.good(), verdict)
        : say("trial.lines", tried.label(), comparison.good(), verdict, comparison.words());
  }

  static Worded say(String key, Object... values) {
    return Worded.of(BUNDLE, key, values);
  }
}
