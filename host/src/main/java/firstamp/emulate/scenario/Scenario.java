package firstamp.emulate.scenario;

import firstamp.emulate.circuit.Script;
import firstamp.emulate.circuit.SetValues;
import firstamp.emulate.line.Faults;
import firstamp.model.RuleId;
import java.util.function.Supplier;

/**
 * One thing that can happen to an invented set.
 *
 * @param description one sentence for the person
 * @param sheet resource that holds the job sheet
 * @param values of the set, made again for every run
 * @param script what happens as time passes
 * @param rule that finds it first, null = none
 * @param seconds how long the switch must be closed for that
 * @param faults of the probe and its cable
 * @param diskFull whether the disk of the bench log is full once the switch has closed
 */
public record Scenario(
    String description,
    String sheet,
    Supplier<SetValues> values,
    Script script,
    RuleId rule,
    int seconds,
    Faults faults,
    boolean diskFull) {
  private static final int USUAL_SECONDS = 4;

  Scenario(String description, String sheet, Supplier<SetValues> values, Script script) {
    this(description, sheet, values, script, null, USUAL_SECONDS, Faults.NONE, false);
  }

  /** The same, made to show a rule. */
  Scenario showing(RuleId shown) {
    return showing(shown, USUAL_SECONDS);
  }

  /** The same, made to show a rule that needs its time. */
  Scenario showing(RuleId shown, int needsSeconds) {
    return new Scenario(description, sheet, values, script, shown, needsSeconds, faults, diskFull);
  }

  Scenario with(Faults wrong) {
    return new Scenario(description, sheet, values, script, rule, seconds, wrong, diskFull);
  }

  Scenario withFullDisk() {
    return new Scenario(description, sheet, values, script, rule, seconds, faults, true);
  }
}
