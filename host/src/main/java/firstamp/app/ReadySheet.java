package firstamp.app;

import firstamp.locate.wire.TriedWire;
import firstamp.log.BenchLog;
import firstamp.log.LogException;
import firstamp.model.JobSheet;
import firstamp.run.SheetTexts;
import firstamp.sheet.Defaults;
import firstamp.sheet.SheetException;
import firstamp.sheet.SheetReader;
import firstamp.sheet.SheetWriter;
import firstamp.study.TrialLimits;

/**
 * A job sheet that can be watched.
 *
 * @param stated as the person wrote it
 * @param effective with defaults filled in
 * @param texts for the log
 */
public record ReadySheet(JobSheet stated, JobSheet effective, SheetTexts texts) {
  /**
   * Reads one.
   *
   * @throws SheetException it is none; says where and what to do
   */
  public static ReadySheet of(String name, String json) throws SheetException {
    JobSheet stated = SheetReader.parse(name, json).sheet();
    JobSheet effective = Defaults.fill(stated);
    return new ReadySheet(
        stated,
        effective,
        new SheetTexts(effective.set().name(), json, SheetWriter.write(effective)));
  }

  /** With the tight limits of a trial; the same where nothing is tried (null). */
  ReadySheet forTrial(BenchLog log, TriedWire tried) throws LogException {
    JobSheet tight = TrialLimits.forTrial(effective, tried, log);
    return tight.equals(effective)
        ? this
        : new ReadySheet(
            stated,
            tight,
            new SheetTexts(tight.set().name(), texts.given(), SheetWriter.write(tight)));
  }
}
