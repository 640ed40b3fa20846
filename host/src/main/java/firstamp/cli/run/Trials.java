package firstamp.cli.run;

import firstamp.cli.output.CliFailure;
import firstamp.cli.output.ExitCode;
import firstamp.cli.output.Logs;
import firstamp.cli.output.Said;
import firstamp.cli.output.Speech;
import firstamp.locate.wire.TriedWire;
import firstamp.log.BenchLog;
import firstamp.log.LogException;
import firstamp.log.PowerUpEntry;
import firstamp.model.JobSheet;
import firstamp.model.text.Explained;
import firstamp.model.text.Wording.Quantity;
import firstamp.run.SheetTexts;
import firstamp.sheet.SheetWriter;
import firstamp.study.Thinking;
import firstamp.study.TrialComparison;
import firstamp.study.TrialLimits;
import java.util.List;

/** Power-ups in which a wire of unknown place is tried: their limits are tight. */
public final class Trials {
  private Trials() {}

  /**
   * The wire that is tried and its place: as the options name them, else as the label begins; null
   * = none.
   */
  public static TriedWire of(JobSheet sheet, RunOptions run) throws CliFailure {
    if (run.wire == null && run.place == null) {
      return Thinking.tried(sheet, run.label);
    }
    if (run.wire == null || run.place == null) {
      throw new CliFailure(ExitCode.USAGE, Said.of("trials.wire-wire-and-place-place"));
    }
    if (sheet.unknownWires().isEmpty()) {
      throw new CliFailure(
          ExitCode.USAGE, Said.of("trials.wire-the-job-sheet-of", run.wire, sheet.set().name()));
    }
    try {
      String wire = Names.of(Said.of("name.what.wire"), run.wire, names(sheet));
      List<String> places =
          sheet.unknownWires().stream()
              .filter(one -> one.name().equals(wire))
              .flatMap(one -> one.places().stream())
              .map(JobSheet.Landing::name)
              .toList();
      return new TriedWire(wire, Names.of(Said.of("name.place-of", wire), run.place, places));
    } catch (IllegalArgumentException unknown) {
      throw new CliFailure(ExitCode.USAGE, Explained.of(unknown), unknown);
    }
  }

  private static List<String> names(JobSheet sheet) {
    return sheet.unknownWires().stream().map(JobSheet.UnknownWire::name).toList();
  }

  /** The label of a power-up: what was typed, else what is tried in it. */
  public static String label(RunOptions run, TriedWire tried) {
    return run.label == null && tried != null ? tried.label() : run.label;
  }

  /** The sheet as it was, or with tight limits, which is reported; null tries nothing. */
  public static Sheets.Ready tightened(
      Sheets.Ready ready, TriedWire tried, BenchLog log, Speech speech) throws CliFailure {
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
      speech.note(
          good == null
              ? Said.of("trials.limit.sheet", tried.wire(), Quantity.amps(runningA(tight)))
              : Said.of(
                  "trials.limit.power-up",
                  tried.wire(),
                  Quantity.amps(runningA(tight)),
                  good.number()));
      return new Sheets.Ready(
          ready.document(),
          tight,
          new SheetTexts(set, ready.texts().given(), SheetWriter.write(tight)));
    } catch (LogException failed) {
      throw Logs.failure(failed);
    }
  }

  private static double runningA(JobSheet sheet) {
    return sheet.limits().runningA();
  }
}
