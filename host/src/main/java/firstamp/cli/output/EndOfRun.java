package firstamp.cli.output;

import firstamp.account.ComparisonWords;
import firstamp.account.Verdict;
import firstamp.account.VerdictSentence;
import firstamp.log.BenchLog;
import firstamp.log.LogException;
import firstamp.model.JobSheet;
import firstamp.model.Summary;
import firstamp.model.text.Explained;
import firstamp.run.LivePowerUp;
import firstamp.sheet.SheetException;
import firstamp.study.Changes;
import firstamp.study.PowerUpStudy;
import firstamp.study.Thinking;
import java.io.PrintStream;

/**
 * What a person reads at the end of a run without asking: the verdict, and what changed since the
 * last power-up of the same set and since the known good one.
 */
public final class EndOfRun {
  private EndOfRun() {}

  /** Prints the verdict of a stored power-up, one sentence a line. */
  public static void verdict(PowerUpStudy study, Speech speech, PrintStream out) {
    for (VerdictSentence sentence : study.verdict().sentences()) {
      out.println(
          speech.say(
              "verdict.line", speech.of(sentence, study.summary().notWatched(), study.sheet())));
    }
  }

  private static void verdict(
      Verdict verdict, Summary summary, JobSheet sheet, Speech speech, PrintStream out) {
    for (VerdictSentence sentence : verdict.sentences()) {
      out.println(speech.say("verdict.line", speech.of(sentence, summary.notWatched(), sheet)));
    }
  }

  /** Prints both; a log that cannot be read again is reported and ends nothing. */
  public static void print(
      BenchLog log, JobSheet sheet, LivePowerUp.Result result, PrintStream out, Speech speech) {
    out.println(speech.say("verdict"));
    Summary summary = result.summary();
    verdict(Verdict.of(sheet, summary, result.evidence()), summary, sheet, speech, out);
    if (summary.powerUp() == null) {
      return;
    }
    try {
      changes(log, sheet, summary.powerUp(), out, speech);
      thinking(log, sheet, summary.powerUp(), out, speech);
    } catch (LogException | SheetException failed) {
      speech.note(Said.of("end-of-run.no-comparison", Explained.of(failed)));
    }
    out.flush();
  }

  /** Where a signal is lost, and what a wire at a place did, if somebody looked for that. */
  private static void thinking(
      BenchLog log, JobSheet sheet, int number, PrintStream out, Speech speech)
      throws LogException, SheetException {
    if (sheet.path() == null && sheet.unknownWires().isEmpty()) {
      return;
    }
    PowerUpStudy now = PowerUpStudy.of(log.find(Integer.toString(number)));
    for (String sentence : Thinking.sentences(log, now, speech.locale())) {
      out.println(speech.say("verdict.line", sentence));
    }
  }

  private static void changes(
      BenchLog log, JobSheet sheet, int number, PrintStream out, Speech speech)
      throws LogException, SheetException {
    for (Changes.Against against : Changes.of(log, number, sheet.set().name()).against()) {
      out.println(
          speech.in(
              Said.of(
                  against.knownGood() ? "end-of-run.against-good" : "end-of-run.against-last",
                  Studies.name(against.earlier()))));
      new ComparisonWords(speech.locale())
          .changes(against.comparison(), sheet)
          .forEach(line -> out.println("  " + line));
    }
  }
}
