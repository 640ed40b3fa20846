package firstamp.cli.output;

import firstamp.account.Verdict;
import firstamp.account.VerdictSentence;
import firstamp.log.BenchLog;
import firstamp.log.LogException;
import firstamp.model.JobSheet;
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

  /** Prints the verdict, one sentence a line. */
  public static void verdict(Verdict verdict, PrintStream out) {
    for (VerdictSentence sentence : verdict.sentences()) {
      out.println("  - " + sentence.text());
    }
  }

  /** Prints both; a log that cannot be read again is reported and ends nothing. */
  public static void print(
      BenchLog log, JobSheet sheet, LivePowerUp.Result result, PrintStream out) {
    out.println("What it showed:");
    verdict(Verdict.of(sheet, result.summary(), result.evidence()), out);
    if (result.summary().powerUp() == null) {
      return;
    }
    try {
      changes(log, sheet, result.summary().powerUp(), out);
      thinking(log, sheet, result.summary().powerUp(), out);
    } catch (LogException | SheetException failed) {
      System.err.println("firstamp: no comparison with earlier power-ups: " + failed.getMessage());
    }
    out.flush();
  }

  /** Where a signal is lost, and what a wire at a place did, if somebody looked for that. */
  private static void thinking(BenchLog log, JobSheet sheet, int number, PrintStream out)
      throws LogException, SheetException {
    if (sheet.path() == null && sheet.unknownWires().isEmpty()) {
      return;
    }
    PowerUpStudy now = PowerUpStudy.of(log.find(Integer.toString(number)));
    for (String sentence : Thinking.sentences(log, now)) {
      out.println("  - " + sentence);
    }
  }

  private static void changes(BenchLog log, JobSheet sheet, int number, PrintStream out)
      throws LogException, SheetException {
    for (Changes.Against against : Changes.of(log, number, sheet.set().name()).against()) {
      out.println(
          "Against "
              + (against.knownGood() ? "the known good " : "the last ")
              + Studies.name(against.earlier())
              + ":");
      against.lines().forEach(out::println);
    }
  }
}
