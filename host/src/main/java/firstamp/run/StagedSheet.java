package firstamp.run;

import firstamp.model.JobSheet;
import firstamp.model.RuleId;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * The sheet for a staged bring-up: rules that need the full voltage rest, and are reported as not
 * watched; the look expects the voltage of the first step. The current limits and the maximum
 * voltage stay as they are.
 */
public final class StagedSheet {
  /** They need nominal volts, or a current that stands. */
  private static final List<RuleId> REST =
      List.of(
          RuleId.NO_DRAW,
          RuleId.CURRENT_CREEP,
          RuleId.RAIL_WINDOW,
          RuleId.RAIL_LATE,
          RuleId.RAIL_UNSTEADY,
          RuleId.RIPPLE,
          RuleId.RIPPLE_TOO_LOW,
          RuleId.RAIL_NOT_FOLLOWING,
          RuleId.HEAD_BELOW_METER,
          RuleId.HUM);

  private StagedSheet() {}

  /** For the rules and the log. */
  public static JobSheet on(JobSheet effective) {
    Map<String, JobSheet.RuleSettings> rules = new HashMap<>(effective.rules());
    for (RuleId rule : REST) {
      JobSheet.RuleSettings s = rule.settings(effective);
      rules.put(
          rule.id(),
          new JobSheet.RuleSettings(
              false,
              s.onDelayMs(),
              s.offDelayMs(),
              s.deadbandPercent(),
              s.latch(),
              s.priority(),
              s.action(),
              s.numbers()));
    }
    // As behind a lamp: volts far under nominal are meant, and no sign of a supply that is
    // limiting.
    return with(effective, effective.supply().nominalV(), "lamp", rules);
  }

  /**
   * For one power-up at half the volts, after it switched itself off: as a step of a bring-up, and
   * what is well over half the volts switches off.
   */
  public static JobSheet half(JobSheet effective) {
    JobSheet staged = on(effective);
    double halfV = effective.supply().nominalV() / 2;
    JobSheet.Supply s = staged.supply();
    return with(
        staged,
        new JobSheet.Supply(
            s.kind(),
            s.probeSits(),
            halfV,
            s.minV() / 2,
            TripsInARow.ceiling(halfV).value(),
            s.limitA(),
            s.fuseA(),
            s.look(),
            s.through(),
            s.labelW(),
            s.idleA(),
            s.capacitanceUf()),
        staged.rules());
  }

  /** For the look of the probe alone. */
  public static JobSheet forProbe(JobSheet effective) {
    return with(
        effective,
        effective.steps().get(0).supplyV(),
        effective.supply().through(),
        effective.rules());
  }

  private static JobSheet with(
      JobSheet sheet, double nominalV, String through, Map<String, JobSheet.RuleSettings> rules) {
    JobSheet.Supply s = sheet.supply();
    return with(
        sheet,
        new JobSheet.Supply(
            s.kind(),
            s.probeSits(),
            nominalV,
            s.minV(),
            s.maxV(),
            s.limitA(),
            s.fuseA(),
            s.look(),
            through,
            s.labelW(),
            s.idleA(),
            s.capacitanceUf()),
        rules);
  }

  private static JobSheet with(
      JobSheet sheet, JobSheet.Supply supply, Map<String, JobSheet.RuleSettings> rules) {
    return new JobSheet(
        sheet.sheet(),
        sheet.set(),
        supply,
        sheet.limits(),
        sheet.rails(),
        sheet.levels(),
        rules,
        sheet.path(),
        sheet.unknownWires(),
        sheet.steps());
  }
}
