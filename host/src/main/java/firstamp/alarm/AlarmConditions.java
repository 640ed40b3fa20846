package firstamp.alarm;

import firstamp.model.JobSheet;
import firstamp.model.RuleId;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/** All watches of a power-up, made when first asked for; a rule that is off has none. */
final class AlarmConditions {
  private final JobSheet sheet;
  private final Map<RuleId, AlarmCondition[]> byRule = new EnumMap<>(RuleId.class);
  private final List<AlarmCondition> all = new ArrayList<>();

  AlarmConditions(JobSheet sheet) {
    this.sheet = sheet;
  }

  /** The watch of a rule on a rail (0 = supply or no rail); null if the sheet turns it off. */
  AlarmCondition of(RuleId rule, int rail) {
    JobSheet.RuleSettings settings = rule.settings(sheet);
    if (!settings.enabled()) {
      return null;
    }
    AlarmCondition[] ofRule = byRule.computeIfAbsent(rule, key -> new AlarmCondition[4]);
    if (ofRule[rail] == null) {
      ofRule[rail] = new AlarmCondition(rule, rail, name(rule, rail), settings);
      all.add(ofRule[rail]);
    }
    return ofRule[rail];
  }

  List<AlarmCondition> all() {
    return all;
  }

  private String name(RuleId rule, int rail) {
    if (rail == 0) {
      // Any input may be off scale: the text names it.
      return rule.scope() == RuleId.Scope.RAIL && rule != RuleId.INPUT_CLIPPED ? "supply" : null;
    }
    JobSheet.Rail said = sheet.rail(rail);
    return said == null || said.name() == null ? "rail " + rail : said.name();
  }
}
