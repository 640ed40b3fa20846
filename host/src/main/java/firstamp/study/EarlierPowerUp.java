package firstamp.study;

import firstamp.trend.TimeCourse;
import java.util.List;
import java.util.Locale;

/**
 * Another power-up of the same set, to be drawn behind or compared.
 *
 * @param powerUp its number
 * @param knownGood flagged as known good
 * @param course of it
 * @param closedMs its course time at which the switch closed
 * @param changes from it to the power-up shown; null = not worked out
 */
public record EarlierPowerUp(
    long powerUp, boolean knownGood, TimeCourse course, double closedMs, Changes changes) {
  /** What changed, before any language. */
  @FunctionalInterface
  public interface Changes {
    /** In sentences; empty = nothing. */
    List<String> in(Locale locale);
  }

  /** Drawn only, not compared. */
  public EarlierPowerUp(long powerUp, boolean knownGood, TimeCourse course, double closedMs) {
    this(powerUp, knownGood, course, closedMs, null);
  }
}
