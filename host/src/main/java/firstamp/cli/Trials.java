package firstamp.cli;

import firstamp.log.BenchLog;
import firstamp.log.LogException;
import firstamp.log.PowerUpEntry;
import firstamp.model.JobSheet;
import firstamp.model.Numbers;
import firstamp.session.SheetTexts;
import firstamp.session.Thinking;
import firstamp.session.TrialComparison;
import firstamp.session.TrialLimits;
import firstamp.sheet.SheetWriter;

/** A power-up whose label names a wire at a place is a trial: its limits are tight. */
final class Trials {
  private Trials() {}

  /** The sheet as it was, or with tight limits, which is said. */
  static Sheets.Ready tightened(Sheets.Ready ready, String label, BenchLog log) throws CliFailure {
    Thinking.Tried tried = Thinking.tried(ready.effective(), label);
    if (tried == null) {
      return ready;
    }
    try {
      String set = ready.effective().set().name();
      PowerUpEntry good = TrialComparison.lastGood(log, set, tried.wire(), Long.MAX_VALUE);
      JobSheet tight = TrialLimits.tighten(ready.effective(), good);
      if (tight.equals(ready.effective())) {
        return ready;
      }
      System.err.println(
          "firstamp: a trial of "
              + tried.wire()
              + ": the limit is "
              + Numbers.amps(tight.limits().runningA())
              + (good == null
                  ? " (from the sheet's idle current)"
                  : " (from power-up " + good.number() + ")"));
      return new Sheets.Ready(
          ready.document(),
          tight,
          new SheetTexts(set, ready.texts().given(), SheetWriter.write(tight)));
    } catch (LogException failed) {
      throw Logs.failure(failed);
    }
  }
}
