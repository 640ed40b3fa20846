package firstamp.account;

import firstamp.model.Alarm;
import firstamp.model.JobSheet;
import firstamp.model.Summary;
import java.util.List;
import java.util.Set;

/**
 * Drops sentences without a basis: how a rail came up, its ripple, or the start of a motor means
 * nothing where that rail has an alarm of its own, where the switch opened meanwhile, where the set
 * draws nothing, or where the voltage was turned up in steps.
 */
final class Resting {
  private static final Set<String> COURSE =
      Set.of("rail.late", "rail.overshoot", "rail.droop", "rail.not-first-order");

  private static final Set<String> RIPPLE =
      Set.of("ripple.half", "ripple.full", "ripple.seen", "hum.not-in-step");

  private static final Set<String> SUPPLY = Set.of("motor.started", "motor.stays", "shape.moving");

  private static final Set<String> OF_A_DRAW = Set.of("settled", "meter.silent", "rail.outside");

  private static final Set<String> OF_STEPS = Set.of("shape.creep", "hum.rose", "hum.fell");

  private final List<Alarm> alarms;
  private final boolean opened;
  private final boolean nothingDraws;
  private final boolean railBroke;
  private final boolean steps;

  Resting(JobSheet sheet, Summary summary) {
    alarms = summary.alarms() == null ? List.of() : summary.alarms();
    opened = summary.tripCause() != null || "rule-off".equals(summary.ended());
    nothingDraws = alarms.stream().anyMatch(alarm -> alarm.rule().equals("no-draw"));
    railBroke = alarms.stream().anyMatch(alarm -> alarm.rule().equals("rail-not-following"));
    steps = !sheet.steps().isEmpty();
  }

  boolean rests(VerdictSentence sentence) {
    String key = sentence.key();
    boolean ownAlarm =
        sentence.rail() > 0
            && alarms.stream()
                .anyMatch(
                    alarm -> alarm.rail() == sentence.rail() && !alarm.rule().equals("ripple"));
    boolean course = COURSE.contains(key);
    return course && (ownAlarm || opened || nothingDraws || steps)
        || RIPPLE.contains(key) && (ownAlarm || nothingDraws)
        || SUPPLY.contains(key) && (railBroke || steps)
        || OF_A_DRAW.contains(key) && nothingDraws
        || OF_STEPS.contains(key) && steps;
  }
}
