package firstamp.cli;

import firstamp.log.BenchLog;
import firstamp.log.PowerUpReader;
import firstamp.model.JobSheet;
import firstamp.session.PortOpener;
import firstamp.session.RunSetup;
import firstamp.session.SheetTexts;

/** A power-up or a replay in the window. */
final class WindowRun {
  private WindowRun() {}

  static int live(
      RunSetup setup,
      SheetTexts sheet,
      PortOpener opener,
      BenchLog log,
      boolean emulated,
      String port)
      throws CliFailure {
    throw new CliFailure(ExitCode.DEFECT, "no window yet; say --headless");
  }

  static int replay(PowerUpReader reader, JobSheet effective, double factor, String logFile)
      throws CliFailure {
    throw new CliFailure(ExitCode.DEFECT, "no window yet; say --headless");
  }
}
