package firstamp.app;

import firstamp.log.PowerUpEntry;
import java.nio.file.Path;
import java.util.List;

/**
 * One set on the first screen.
 *
 * @param name of the set
 * @param kind what it is
 * @param sheetJson its job sheet: the file beside the log, else the latest power-up's; null = none
 * @param begunJson answers that were begun and left, null = none
 * @param log where its power-ups are
 * @param powerUps newest first
 * @param lastEpochMs when it was last used
 * @param job where its job stands
 */
public record SetEntry(
    String name,
    Kind kind,
    String sheetJson,
    String begunJson,
    Path log,
    List<PowerUpEntry> powerUps,
    long lastEpochMs,
    JobState job) {
  public SetEntry {
    powerUps = List.copyOf(powerUps);
  }

  /** Nothing is known about its job. */
  SetEntry(
      String name,
      Kind kind,
      String sheetJson,
      String begunJson,
      Path log,
      List<PowerUpEntry> powerUps,
      long lastEpochMs) {
    this(name, kind, sheetJson, begunJson, log, powerUps, lastEpochMs, JobState.NOTHING);
  }

  SetEntry with(JobState state) {
    return new SetEntry(name, kind, sheetJson, begunJson, log, powerUps, lastEpochMs, state);
  }

  /** Kinds of entries. */
  public enum Kind {
    /** A set with a job sheet. */
    REAL,
    /** A job sheet that was begun. */
    BEGUN,
    /** The invented sets on the emulated probe. */
    EMULATED
  }
}
