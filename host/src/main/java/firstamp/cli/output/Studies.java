package firstamp.cli.output;

import firstamp.log.BenchLog;
import firstamp.log.LogException;
import firstamp.log.PowerUpEntry;
import firstamp.model.text.Explained;
import firstamp.model.text.Worded;
import firstamp.sheet.SheetException;
import firstamp.study.PowerUpStudy;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;

/** Stored power-ups with figures and verdict, for commands. */
public final class Studies {
  private static final DateTimeFormatter LOCAL =
      DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm").withZone(ZoneId.systemDefault());

  private Studies() {}

  /** Finds one and works out its figures. */
  public static PowerUpStudy read(BenchLog log, String id) throws CliFailure {
    try {
      return PowerUpStudy.of(log.find(id));
    } catch (LogException failed) {
      throw Logs.failure(failed);
    } catch (SheetException bad) {
      throw new CliFailure(ExitCode.BAD_DATA, Explained.of(bad), bad);
    }
  }

  /** Begin of a power-up in words. */
  static String started(PowerUpEntry entry) {
    return LOCAL.format(Instant.ofEpochMilli(entry.startedEpochMs()));
  }

  /** A power-up in a heading: number, begin, label. */
  public static Worded name(PowerUpEntry entry) {
    return entry.label() == null
        ? Said.of("power-up.started", entry.number(), started(entry))
        : Said.of("power-up.label", entry.number(), started(entry), entry.label());
  }
}
