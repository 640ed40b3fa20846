package firstamp.alarm;

import firstamp.model.Alarm;

/** Hears what the rules decide, on the thread that feeds them. */
public interface RuleListener {
  /** An alarm was raised or changed its state. */
  void onAlarm(Alarm alarm);

  /**
   * A rule demands that the switch opens.
   *
   * @param rule identifier of the rule
   */
  void onAction(String rule);

  /** The opening of the switch is seen: the volts on the set fall. */
  default void onOpeningSeen(long micros) {}
}
