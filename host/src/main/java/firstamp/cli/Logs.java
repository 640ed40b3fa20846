package firstamp.cli;

import firstamp.log.BenchLog;
import firstamp.log.LogException;
import firstamp.log.PowerUpReader;
import firstamp.model.TimeSource;
import java.nio.file.Path;

/** Bench logs for commands, with the exit code of each kind of failure. */
final class Logs {
  private Logs() {}

  static BenchLog openForWriting(Path file) throws CliFailure {
    try {
      return BenchLog.open(file == null ? BenchLog.defaultFile() : file, TimeSource.system());
    } catch (LogException failed) {
      throw failure(failed);
    }
  }

  static BenchLog openForReading(Path file) throws CliFailure {
    try {
      return BenchLog.openForReading(
          file == null ? BenchLog.defaultFile() : file, TimeSource.system());
    } catch (LogException failed) {
      throw failure(failed);
    }
  }

  static PowerUpReader find(BenchLog log, String id) throws CliFailure {
    try {
      return log.find(id);
    } catch (LogException failed) {
      throw failure(failed);
    }
  }

  /** Exit code by kind. */
  static CliFailure failure(LogException failed) {
    int code =
        switch (failed.kind()) {
          case MISSING, UNREADABLE -> ExitCode.NO_INPUT;
          case NOT_A_LOG, NEWER, DAMAGED -> ExitCode.BAD_DATA;
          default -> ExitCode.IO_ERROR;
        };
    return new CliFailure(code, failed.getMessage(), failed);
  }
}
