package firstamp.run;

import firstamp.model.JobSheet;
import firstamp.model.RuleId;
import firstamp.model.text.Worded;
import java.util.HashMap;
import java.util.Map;

/**
 * A sheet for a run that nobody watches: where it does not ask for slow climbing, it does now.
 *
 * <p>A steady set stays within 2 to 5 % over ten minutes (common practice, no source); the rule
 * then takes half of what stands on the sheet while the run soaks. What the sheet says is never
 * widened.
 */
public final class Soak {
  /** How long it lasts where nobody says. */
  public static final int USUAL_HOURS = 2;

  private static final String BUNDLE = "firstamp.run.modes";
  private static final double SHARE_PER_MIN = 0.02;
  private static final double LEAST_A_PER_MIN = 0.001;

  private Soak() {}

  /** The sheet, filled, with the rule in it. */
  public static JobSheet on(JobSheet effective) {
    JobSheet.RuleSettings said = RuleId.CURRENT_CREEP.settings(effective);
    if (said.numbers().get("overAPerMin") != null && Boolean.TRUE.equals(said.enabled())) {
      return effective;
    }
    Double idle = effective.supply().idleA();
    JobSheet.Limits limits = effective.limits();
    double drawn =
        idle != null
            ? idle
            : limits == null || limits.runningA() == null ? 0 : limits.runningA() / 1.5;
    Map<String, Double> numbers = new HashMap<>(said.numbers());
    numbers.put("overAPerMin", Math.max(LEAST_A_PER_MIN, SHARE_PER_MIN * drawn));
    numbers.put("forMs", 60_000.0);
    Map<String, JobSheet.RuleSettings> rules = new HashMap<>(effective.rules());
    rules.put(
        RuleId.CURRENT_CREEP.id(),
        new JobSheet.RuleSettings(
            true,
            said.onDelayMs(),
            said.offDelayMs(),
            said.deadbandPercent(),
            said.latch(),
            said.priority(),
            said.action(),
            numbers));
    return new JobSheet(
        effective.sheet(),
        effective.set(),
        effective.supply(),
        effective.limits(),
        effective.rails(),
        effective.levels(),
        rules,
        effective.path(),
        effective.unknownWires(),
        effective.steps());
  }

  /**
   * Why nobody may leave this set alone; null = nothing against it.
   *
   * @param awakeProblem why the computer may fall asleep, null = it is kept awake
   */
  public static Worded refused(JobSheet effective, Worded awakeProblem) {
    if (effective.supply().fuseA() == null) {
      return words("soak.noFuse");
    }
    if (effective.limits() == null || effective.limits().runningA() == null) {
      return words("soak.noLimit");
    }
    return awakeProblem == null ? null : words("soak.asleep", awakeProblem);
  }

  /** What hands in or soak says. */
  static Worded words(String key, Object... values) {
    return Worded.of(BUNDLE, key, values);
  }
}
