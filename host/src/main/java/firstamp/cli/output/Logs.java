package firstamp.cli.output;

import firstamp.log.BenchLog;
import firstamp.log.LogException;
import firstamp.log.PowerUpReader;
import firstamp.model.TimeSource;
import firstamp.model.text.Explained;
import java.nio.file.Path;

/** Bench logs for commands, with the exit code of each kind of failure. */
public final class Logs {
  private Logs() {}

  public static BenchLog openForWriting(Path file, Speech speech) throws CliFailure {
    try {
      BenchLog log =
          BenchLog.open(file == null ? BenchLog.defaultFile() : file, TimeSource.system());
      if (log.keptBefore() != null) {
        speech.note(Said.of("logs.was-made-by-an-older", log.file(), log.keptBefore()));
      }
      return log;
    } catch (LogException failed) {
      throw failure(failed);
    }
  }

  /** Where a demo is kept: never in the bench log, which is for real sets. */
  public static Path demoFile(Path named) {
    return named == null ? Path.of("demo.db") : named;
  }

  /** Where nobody named a log for emulated sets, the place is reported once something is kept. */
  public static void sayKept(BenchLog log, Path named, Speech speech) {
    if (named == null) {
      speech.note(Said.of("logs.kept-in-apart-from-the", log.file()));
    }
  }

  public static BenchLog openForReading(Path file) throws CliFailure {
    try {
      return BenchLog.openForReading(
          file == null ? BenchLog.defaultFile() : file, TimeSource.system());
    } catch (LogException failed) {
      throw failure(failed);
    }
  }

  public static PowerUpReader find(BenchLog log, String id) throws CliFailure {
    try {
      return log.find(id);
    } catch (LogException failed) {
      throw failure(failed);
    }
  }

  /** Exit code by kind. */
  public static CliFailure failure(LogException failed) {
    int code =
        switch (failed.kind()) {
          case MISSING, UNREADABLE -> ExitCode.NO_INPUT;
          case NOT_A_LOG, NEWER, DAMAGED -> ExitCode.BAD_DATA;
          case EXISTS -> ExitCode.CANNOT_MAKE;
          default -> ExitCode.IO_ERROR;
        };
    return new CliFailure(code, Explained.of(failed), failed);
  }
}
