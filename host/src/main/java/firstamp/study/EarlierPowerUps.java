package firstamp.study;

import firstamp.log.BenchLog;
import firstamp.log.LogException;
import firstamp.log.PowerUpEntry;
import firstamp.trend.LoggedCourse;
import java.util.ArrayList;
import java.util.List;

/** Which earlier power-ups of the same set a power-up is held against unasked. */
public final class EarlierPowerUps {
  /** A longer one is not read again at the end of a run: it would keep the person waiting. */
  private static final long LONGEST_MS = 20 * 60_000;

  private EarlierPowerUps() {}

  /**
   * An earlier power-up.
   *
   * @param entry of the log
   * @param knownGood flagged as known good, else simply the last one
   */
  public record Earlier(PowerUpEntry entry, boolean knownGood) {}

  /**
   * The last finished power-up of the set before this one, and the latest known good one, where
   * there are such; one entry if both are the same.
   *
   * @param log to look in
   * @param number of the power-up
   * @param setName of its set
   */
  public static List<Earlier> of(BenchLog log, long number, String setName) throws LogException {
    PowerUpEntry last = null;
    PowerUpEntry knownGood = null;
    for (PowerUpEntry entry : log.list()) {
      boolean fits =
          entry.number() < number
              && entry.finished()
              && entry.setName().equals(setName)
              && durationMs(entry) <= LONGEST_MS;
      if (fits) {
        last = entry;
        knownGood = entry.baseline() ? entry : knownGood;
      }
    }
    List<Earlier> earlier = new ArrayList<>();
    if (last != null) {
      earlier.add(new Earlier(last, last.equals(knownGood)));
    }
    if (knownGood != null && !knownGood.equals(last)) {
      earlier.add(new Earlier(knownGood, true));
    }
    return earlier;
  }

  /**
   * The power-up of a set to hold a new one against by eye: the latest known good one, else the
   * latest that ended without an alarm; null = there is none. However long: its course is not read
   * as a whole.
   */
  public static PowerUpEntry lastGood(BenchLog log, String setName) throws LogException {
    PowerUpEntry good = null;
    for (PowerUpEntry entry : log.list()) {
      boolean fits = entry.finished() && entry.setName().equals(setName);
      if (fits && (entry.baseline() || "normal".equals(entry.outcome()))) {
        good = entry.baseline() || good == null || !good.baseline() ? entry : good;
      }
    }
    return good;
  }

  /** Its course, to be drawn behind; null = there is none, or its switch never closed. */
  public static EarlierPowerUp course(BenchLog log, String setName) throws LogException {
    PowerUpEntry good = lastGood(log, setName);
    if (good == null) {
      return null;
    }
    var reader = log.find(good.uuid());
    var events = reader.events();
    LoggedCourse course = LoggedCourse.open(reader, events);
    for (var event : events) {
      if (event instanceof firstamp.model.ProbeEvent.SwitchChanged changed
          && changed.state() == firstamp.model.SwitchState.ON) {
        double closedMs = course.courseMs(changed.micros());
        return new EarlierPowerUp(good.number(), good.baseline(), course, closedMs);
      }
    }
    course.close();
    return null;
  }

  private static long durationMs(PowerUpEntry entry) {
    return entry.endedEpochMs() == null ? 0 : entry.endedEpochMs() - entry.startedEpochMs();
  }
}
