package firstamp.model;

import firstamp.model.text.Wording;

/**
 * One raising of a rule, in its present state. Every change of state is a new value with the same
 * {@code number}.
 *
 * @param number of the raising within the power-up, from 1
 * @param rule identifier of the rule
 * @param rail 1 to 3; 0 = the supply (rail-window, over-voltage) or no rail
 * @param railName name from the sheet, "supply" for rail 0 of rules about rails, null otherwise
 * @param atMs raised after the delay, milliseconds from the closing of the switch (look findings:
 *     from its start)
 * @param sinceMs when the condition began
 * @param changedMs when it came into this state
 * @param priority of the rule
 * @param state now
 * @param value what was seen, null = not measurable
 * @param atMost whether the value is an upper bound
 * @param limit what it was compared with, null = none
 * @param unit of value and limit, null = none
 * @param text what was seen, the limit, what to do first, in English, as the log keeps it
 * @param foldedUnder number of the alarm that came first and under which this one is shown, 0 =
 *     none
 * @param words the same text before any language, null = it was read from a log
 */
public record Alarm(
    int number,
    String rule,
    int rail,
    String railName,
    double atMs,
    double sinceMs,
    double changedMs,
    Priority priority,
    AlarmState state,
    Double value,
    boolean atMost,
    Double limit,
    String unit,
    String text,
    int foldedUnder,
    Wording words) {

  /** As a log keeps it. */
  public Alarm(
      int number,
      String rule,
      int rail,
      String railName,
      double atMs,
      double sinceMs,
      double changedMs,
      Priority priority,
      AlarmState state,
      Double value,
      boolean atMost,
      Double limit,
      String unit,
      String text,
      int foldedUnder) {
    this(
        number,
        rule,
        rail,
        railName,
        atMs,
        sinceMs,
        changedMs,
        priority,
        state,
        value,
        atMost,
        limit,
        unit,
        text,
        foldedUnder,
        null);
  }

  /** The same raising in another state. */
  public Alarm inState(AlarmState next, double ms) {
    return new Alarm(
        number,
        rule,
        rail,
        railName,
        atMs,
        sinceMs,
        ms,
        priority,
        next,
        value,
        atMost,
        limit,
        unit,
        text,
        foldedUnder,
        words);
  }

  /**
   * The same in other words.
   *
   * @param english the text of these words
   */
  public Alarm saying(Wording other, String english) {
    return new Alarm(
        number,
        rule,
        rail,
        railName,
        atMs,
        sinceMs,
        changedMs,
        priority,
        state,
        value,
        atMost,
        limit,
        unit,
        english,
        foldedUnder,
        other);
  }

  /** The same, shown under another alarm. */
  public Alarm folded(int under) {
    return new Alarm(
        number, rule, rail, railName, atMs, sinceMs, changedMs, priority, state, value, atMost,
        limit, unit, text, under, words);
  }
}
