package firstamp.alarm;

import firstamp.model.JobSheet;
import firstamp.model.RuleId;

/**
 * One rule on one rail: waits out the on-delay before it asks to be raised, and the off-delay
 * beyond the deadband before it is over.
 */
final class AlarmCondition {
  private final RuleId rule;
  private final int rail;
  private final String name;
  private final JobSheet.RuleSettings settings;
  private final double deadband;
  private final long onDelayMicros;
  private final long offDelayMicros;
  private long badSince = RunState.NEVER;
  private long goodSince = RunState.NEVER;
  private boolean judged;
  private int standing;
  private boolean gone;

  AlarmCondition(RuleId rule, int rail, String name, JobSheet.RuleSettings settings) {
    this.rule = rule;
    this.rail = rail;
    this.name = name;
    this.settings = settings;
    this.deadband = settings.deadbandPercent() / 100;
    this.onDelayMicros = Math.round(settings.onDelayMs() * 1000);
    this.offDelayMicros = Math.round(settings.offDelayMs() * 1000);
  }

  RuleId rule() {
    return rule;
  }

  int rail() {
    return rail;
  }

  String name() {
    return name;
  }

  JobSheet.RuleSettings settings() {
    return settings;
  }

  /** Share of the limit by which a value must come back. */
  double deadband() {
    return deadband;
  }

  double number(String key) {
    return settings.numbers().get(key);
  }

  boolean has(String key) {
    return settings.numbers().containsKey(key);
  }

  /** Whether it had what it needs at least once. */
  boolean judged() {
    return judged;
  }

  /** Number of the active alarm, 0 = none. */
  int standing() {
    return standing;
  }

  boolean stands() {
    return standing != 0;
  }

  /** Whether the condition of an active alarm is over (the alarm is latched). */
  boolean gone() {
    return gone;
  }

  /** Start of the condition that is being waited out or is active. */
  long badSince() {
    return badSince;
  }

  /**
   * Takes one stretch of time.
   *
   * @param fromMicros its start
   * @param toMicros its end
   * @param bad beyond the limit
   * @param good back beyond the deadband
   * @return what is to be done now
   */
  Step step(long fromMicros, long toMicros, boolean bad, boolean good) {
    judged = true;
    if (bad) {
      goodSince = RunState.NEVER;
      gone = false;
      if (badSince == RunState.NEVER) {
        badSince = fromMicros;
      }
      return !stands() && toMicros - badSince >= onDelayMicros ? Step.RAISE : Step.NOTHING;
    }
    if (!stands()) {
      badSince = RunState.NEVER;
      return Step.NOTHING;
    }
    if (!good) {
      goodSince = RunState.NEVER;
      return Step.NOTHING;
    }
    if (goodSince == RunState.NEVER) {
      goodSince = fromMicros;
    }
    if (toMicros - goodSince < offDelayMicros || gone) {
      return Step.NOTHING;
    }
    return Step.CLEAR;
  }

  /** Not measurable now: a running delay restarts, an active alarm stays. */
  void unknown() {
    goodSince = RunState.NEVER;
    if (!stands()) {
      badSince = RunState.NEVER;
    }
  }

  void raised(int number, long sinceMicros) {
    standing = number;
    badSince = sinceMicros;
    goodSince = RunState.NEVER;
    gone = false;
    judged = true;
  }

  /** The condition is over; a latched alarm stays active. */
  void conditionGone() {
    gone = true;
    if (!settings.latch()) {
      cleared();
    }
  }

  void cleared() {
    standing = 0;
    badSince = RunState.NEVER;
    goodSince = RunState.NEVER;
  }

  /** Decision of one step. */
  enum Step {
    /** Nothing to do. */
    NOTHING,
    /** The condition has lasted for the whole on-delay. */
    RAISE,
    /** It has been over for the whole off-delay. */
    CLEAR
  }
}
