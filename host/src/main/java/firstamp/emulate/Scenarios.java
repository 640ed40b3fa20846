package firstamp.emulate;

import firstamp.emulate.bench.Bench;
import firstamp.emulate.box.Box;
import firstamp.emulate.circuit.CircuitBench;
import firstamp.emulate.circuit.Script;
import firstamp.emulate.line.Faults;
import firstamp.emulate.line.Pace;
import firstamp.emulate.scenario.BoxScenarios;
import firstamp.emulate.scenario.RailScenarios;
import firstamp.emulate.scenario.Scenario;
import firstamp.emulate.scenario.ScenarioList;
import firstamp.emulate.scenario.SignalScenarios;
import firstamp.emulate.scenario.SupplyScenarios;
import firstamp.emulate.scenario.ThinkingScenarios;
import firstamp.model.RuleId;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The invented sets and what can happen to them; the only place that knows their names. */
public final class Scenarios {
  private static final Map<String, Scenario> ALL = new LinkedHashMap<>();
  private static final Map<String, List<String>> GROUPS = new LinkedHashMap<>();

  static {
    all()
        .groups()
        .forEach(
            (concerns, scenarios) -> {
              ALL.putAll(scenarios);
              GROUPS.put(concerns, List.copyOf(scenarios.keySet()));
            });
  }

  private Scenarios() {}

  /** All there are, the plain one first. */
  private static ScenarioList all() {
    ScenarioList list = new ScenarioList();
    list.group("plain");
    list.put(
        "healthy", ScenarioList.larch("The dictation unit comes up as it should.", Script.NONE));
    list.group("supply");
    SupplyScenarios.addTo(list);
    list.group("signal");
    SignalScenarios.addTo(list);
    list.group("rails");
    RailScenarios.addTo(list);
    list.group("box");
    BoxScenarios.addTo(list);
    list.group("thinking");
    ThinkingScenarios.addTo(list);
    return list;
  }

  /** All names, the plain ones first. */
  public static List<String> names() {
    return List.copyOf(ALL.keySet());
  }

  /** The names under what they concern, in the same order. */
  public static Map<String, List<String>> groups() {
    return Collections.unmodifiableMap(GROUPS);
  }

  /** What happens, in one sentence. */
  public static String describe(String name) {
    return find(name).description();
  }

  /** The scenario that was made to show a rule; every rule has one. */
  public static String showing(RuleId rule) {
    for (Map.Entry<String, Scenario> entry : ALL.entrySet()) {
      if (entry.getValue().rule() == rule) {
        return entry.getKey();
      }
    }
    throw new IllegalStateException("no scenario shows " + rule.id());
  }

  /** How long the switch must be closed to see what the scenario shows. */
  public static int seconds(String name) {
    return find(name).seconds();
  }

  /** Whether the disk of the bench log is full once the switch has closed. */
  public static boolean fillsDisk(String name) {
    return find(name).diskFull();
  }

  /** The job sheet of the scenario's set, JSON. */
  public static String sheetJson(String name) {
    String resource = find(name).sheet();
    try (InputStream in = Scenarios.class.getResourceAsStream(resource)) {
      if (in == null) {
        throw new IllegalStateException("job sheet " + resource + " is missing in the program");
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException broken) {
      throw new UncheckedIOException("job sheet " + resource + " cannot be read", broken);
    }
  }

  /** A probe with the scenario's set behind it, usual noise, no faults. */
  public static EmulatedProbe open(String name, long seed, Pace pace) {
    return open(name, ProbeOptions.of(seed, pace));
  }

  /** A probe with the scenario's set behind it; faults in the options come before its own. */
  public static EmulatedProbe open(String name, ProbeOptions given) {
    boolean own = given.faults().equals(Faults.NONE);
    ProbeOptions options = own ? given.withFaults(find(name).faults()) : given;
    return new EmulatedProbe(
        bench(name, options.seed()),
        "emulated probe, scenario " + name,
        options,
        Box.of(options.box(), options.seed()));
  }

  static Bench bench(String name, long seed) {
    Scenario scenario = find(name);
    return new CircuitBench(scenario.values().get(), scenario.script(), seed);
  }

  private static Scenario find(String name) {
    Scenario scenario = ALL.get(name);
    if (scenario == null) {
      throw new IllegalArgumentException(
          "no scenario \"" + name + "\"; there are " + String.join(", ", ALL.keySet()));
    }
    return scenario;
  }
}
