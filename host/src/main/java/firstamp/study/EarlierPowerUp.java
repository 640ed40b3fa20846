package firstamp.study;

import firstamp.trend.TimeCourse;
import java.util.List;

/**
 * Another power-up of the same set, to be drawn behind or compared.
 *
 * @param powerUp its number
 * @param knownGood flagged as known good
 * @param course of it
 * @param closedMs its course time at which the switch closed
 * @param changes from it to the power-up shown, in sentences; null = not worked out
 */
public record EarlierPowerUp(
    long powerUp, boolean knownGood, TimeCourse course, double closedMs, List<String> changes) {
  /** Copies the list. */
  public EarlierPowerUp {
    changes = changes == null ? null : List.copyOf(changes);
  }

  /** Drawn only, not compared. */
  public EarlierPowerUp(long powerUp, boolean knownGood, TimeCourse course, double closedMs) {
    this(powerUp, knownGood, course, closedMs, null);
  }
}
