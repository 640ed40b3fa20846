package firstamp.emulate.scenario;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The worked examples and the power-ups of invented sets that they are made of. */
public final class WorkedExamples {
  private static final Map<String, List<Run>> ALL = all();

  private WorkedExamples() {}

  /**
   * A power-up of an example.
   *
   * @param scenario of the invented set
   * @param label of the power-up: which wire is where; null = none
   * @param forSeconds how long it stays on
   */
  public record Run(String scenario, String label, double forSeconds) {}

  private static Map<String, List<Run>> all() {
    Map<String, List<Run>> all = new LinkedHashMap<>();
    all.put("silent-head", List.of(new Run("silent-head", null, 60)));
    all.put(
        "screened-lead",
        List.of(
            new Run("lead-off", null, 8),
            new Run("lead-through-resistor", "W3 at preamp input, through 1 kohm", 8),
            new Run("lead-soldered", "W3 at preamp input", 8)));
    all.put(
        "cotton-leads",
        List.of(
            new Run("feed-lead-off", null, 5),
            new Run("feed-lead-off", "lead 1 at empty tag", 5),
            new Run("feed-lead-on", "lead 1 at IF feed tag", 5)));
    return all;
  }

  /** Their names. */
  public static List<String> names() {
    return List.copyOf(ALL.keySet());
  }

  /** The power-ups of an example: the last good one first, then one per trial. */
  public static List<Run> runs(String name) {
    List<Run> runs = ALL.get(name);
    if (runs == null) {
      throw new IllegalArgumentException("no example " + name + "; there are " + names());
    }
    return runs;
  }
}
