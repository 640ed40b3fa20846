package firstamp.emulate.scenario;

import static firstamp.emulate.scenario.ScenarioList.other;

import firstamp.emulate.circuit.RovingPath;
import firstamp.emulate.circuit.Script;
import firstamp.emulate.circuit.SetValues;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Consumer;

/** Something to find out: where a signal is lost, where a wire belongs. */
public final class ThinkingScenarios {
  private static final String LARCH_PATH = "larch-d2-path.json";
  private static final String LARCH_WIRES = "larch-d2-wires.json";
  private static final String OSTREL_LEADS = "ostrel-pocket-leads.json";

  /** A lead that ends in the air. */
  private static final double OPEN_OHM = 100e6;

  private ThinkingScenarios() {}

  public static void addTo(ScenarioList list) {
    list.put(
        "silent-head",
        other(
            "The head is silent because the earphone jack's muting contact sticks; a clip can be"
                + " moved along the path.",
            LARCH_PATH,
            () -> changed(InventedSets.larch(), set -> set.path = recordChain()),
            Script.NONE));
    list.put(
        "lead-off",
        wires(
            "A screened lead is loose, its end insulated: no signal, hum in the head.",
            ThinkingScenarios::openLead));
    list.put(
        "lead-through-resistor",
        wires(
            "The screened lead is joined to the preamplifier's input through 1 kohm, its screen"
                + " still open.",
            set -> set.headHumRmsV = 1e-3));
    list.put(
        "lead-soldered",
        wires("The screened lead and its screen are where they belong.", set -> {}));
    list.put(
        "lead-at-rail",
        wires(
            "The screened lead is joined to the rail: it draws through what it feeds.",
            set -> {
              openLead(set);
              set.railLoadOhm = 47;
            }));
    list.put(
        "feed-lead-off",
        other(
            "The lead that feeds the IF stages of the pocket radio is off, its end insulated.",
            OSTREL_LEADS,
            () -> radio(OPEN_OHM),
            Script.NONE));
    list.put(
        "feed-lead-on",
        other(
            "The lead that feeds the IF stages of the pocket radio is where it belongs.",
            OSTREL_LEADS,
            () -> radio(195),
            Script.NONE));
  }

  /** The pocket radio with a filter that lets its feed capacitor charge slowly. */
  private static SetValues radio(double feedOhm) {
    return changed(
        InventedSets.ostrel(),
        set -> {
          set.filterOhm = 47;
          set.dropperOhm = feedOhm;
        });
  }

  private static void openLead(SetValues set) {
    set.meterRmsV = 0.2e-3;
    set.headHumRmsV = 1e-3;
  }

  /** Trials are made with the motor held, so that its start does not hide what a wire draws. */
  private static Scenario wires(String description, Consumer<SetValues> fault) {
    Consumer<SetValues> held = set -> set.motor = false;
    return other(
        description,
        LARCH_WIRES,
        () -> changed(InventedSets.larch(), held.andThen(fault)),
        Script.NONE);
  }

  private static SetValues changed(SetValues set, Consumer<SetValues> fault) {
    fault.accept(set);
    return set;
  }

  /** Levels as on the sheet; the contact loses 38 dB, and this much after each stroke. */
  private static RovingPath recordChain() {
    Map<String, Double> well = new LinkedHashMap<>();
    well.put("record/microphone", -72.0);
    well.put("record/preamp out", -30.0);
    well.put("record/meter", -18.0);
    well.put("record/driver in", -38.0);
    well.put("record/driver out", -4.0);
    well.put("record/behind the jack", -4.0);
    well.put("record/head", -58.0);
    well.put("play/head", -70.0);
    well.put("play/preamp out", -32.0);
    well.put("play/meter", -18.0);
    well.put("play/loudspeaker", -8.0);
    Map<String, Boolean> behind = Map.of("record/behind the jack", true, "record/head", true);
    String contact = "muting contact of the earphone jack";
    return new RovingPath(well, behind, contact, 38, 7, 1, 26, 0.5, 0.5);
  }
}
