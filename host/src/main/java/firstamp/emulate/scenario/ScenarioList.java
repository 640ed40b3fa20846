package firstamp.emulate.scenario;

import firstamp.emulate.circuit.Script;
import firstamp.emulate.circuit.SetValues;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Consumer;
import java.util.function.Supplier;

/** Collects scenarios under their names, in the order in which they are shown. */
public final class ScenarioList {
  private static final String LARCH = "larch-d2.json";
  private static final String LARCH_MAINS = "larch-d2-mains.json";

  private final Map<String, Map<String, Scenario>> groups = new LinkedHashMap<>();
  private Map<String, Scenario> group;

  /** All so far under what they concern, in the order of their coming. */
  public Map<String, Map<String, Scenario>> groups() {
    return groups;
  }

  /** What follows concerns this. */
  public void group(String concerns) {
    group = new LinkedHashMap<>();
    groups.put(concerns, group);
  }

  public void put(String name, Scenario scenario) {
    group.put(name, scenario);
  }

  /** The dictation unit on its bench supply, with something wrong from the start. */
  public static Scenario larch(String description, Consumer<SetValues> fault) {
    return other(description, LARCH, () -> changed(InventedSets.larch(), fault), Script.NONE);
  }

  /** The dictation unit on its bench supply, and something that happens to it. */
  public static Scenario larch(String description, Script script) {
    return other(description, LARCH, InventedSets::larch, script);
  }

  /** The dictation unit on its mains transformer. */
  static Scenario mains(String description, Consumer<SetValues> fault) {
    Supplier<SetValues> set = () -> changed(InventedSets.larchOnMains(), fault);
    return other(description, LARCH_MAINS, set, Script.NONE);
  }

  /** Another set, or another sheet. */
  static Scenario other(String description, String sheet, Supplier<SetValues> set, Script script) {
    return new Scenario(description, sheet, set, script);
  }

  private static SetValues changed(SetValues set, Consumer<SetValues> fault) {
    fault.accept(set);
    return set;
  }
}
