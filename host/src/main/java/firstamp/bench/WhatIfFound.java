package firstamp.bench;

import firstamp.alarm.AlarmWords;
import firstamp.log.LogException;
import firstamp.log.PowerUpHeader;
import firstamp.model.Alarm;
import firstamp.model.JobSheet;
import firstamp.model.Summary;
import firstamp.model.text.Worded;
import firstamp.study.ReplayRules;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;

/** Reads out of the rules what another sheet would have done to a logged power-up. */
final class WhatIfFound {
  private WhatIfFound() {}

  /**
   * What was found.
   *
   * @param other sheet
   * @param rules that were run with it
   * @param stream that was kept
   * @param closed course time of the switch-on, null = it was never on
   */
  static Snapshot.WhatIf of(
      JobSheet other, ReplayRules rules, PowerUpHeader.Stream stream, Double closed)
      throws LogException {
    Summary would = rules.summary();
    boolean off = "trip".equals(would.ended()) || "rule-off".equals(would.ended());
    List<Alarm> raised = last(rules.transitions());
    boolean raw = stream == PowerUpHeader.Stream.RAW;
    return new Snapshot.WhatIf(
        other,
        1,
        raised,
        off && closed != null ? (Double) (closed + would.onMs()) : null,
        off ? reason(raised, would, rules.demanded()) : null,
        raw ? Snapshot.Judged.ALL : Snapshot.Judged.RULES_ONLY);
  }

  private static Worded reason(List<Alarm> raised, Summary would, Alarm demanded) {
    for (Alarm alarm : raised) {
      if (would.tripAtMs() != null && alarm.atMs() == would.tripAtMs()) {
        return AlarmWords.worded(alarm);
      }
    }
    return demanded == null ? null : AlarmWords.worded(demanded);
  }

  private static List<Alarm> last(List<Alarm> transitions) {
    SortedMap<Integer, Alarm> latest = new TreeMap<>();
    transitions.forEach(alarm -> latest.put(alarm.number(), alarm));
    return List.copyOf(latest.values());
  }
}
