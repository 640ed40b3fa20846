package firstamp.emulate.scenario;

import static firstamp.emulate.scenario.InventedSets.NEVER;
import static firstamp.emulate.scenario.ScenarioList.larch;
import static firstamp.emulate.scenario.ScenarioList.other;

import firstamp.emulate.circuit.Script;
import firstamp.emulate.circuit.SetValues;
import firstamp.model.RuleId;

/** What happens to the supply and to its current. */
public final class SupplyScenarios {
  private SupplyScenarios() {}

  /** 3, 6, 9, 12 V, each turn of the knob in two seconds. */
  private static double byHand(double sinceS) {
    double step = Math.floor(Math.max(0, sinceS) / 20);
    double turned = Math.min(1, Math.max(0, sinceS - 20 * step) / 2);
    return step == 0 ? 3 : step > 3 ? 12 : 3 * step + 3 * turned;
  }

  public static void addTo(ScenarioList list) {
    list.put(
        "wire-short",
        larch(
                "An unidentified screened lead touches the chassis some time after switching on.",
                (set, sinceS) -> set.shortOhm = sinceS > 1.2 ? 1.2 : NEVER)
            .showing(RuleId.OVER_CURRENT));
    list.put(
        "look-short", larch("The supply is shorted from the start.", set -> set.shortOhm = 1.2));
    list.put(
        "no-draw",
        larch("The set draws nothing: a lead is off.", set -> set.setJoined = false)
            .showing(RuleId.NO_DRAW));
    list.put(
        "dead-short",
        larch(
            "The supply is shorted by thick wire some time after switching on.",
            (set, sinceS) -> set.shortOhm = sinceS > 0.9 ? 0.15 : NEVER));
    list.put(
        "limiting",
        other(
                "A part breaks down, and the bench supply, turned down to half an ampere, holds it.",
                "larch-d2-little.json",
                InventedSets::larchOnLittle,
                (set, sinceS) -> set.shortOhm = sinceS > 1.5 ? 12 : NEVER)
            .showing(RuleId.SHORT));
    list.put(
        "leaky",
        larch(
            "The filter capacitor leaks more and more as it warms.",
            (set, sinceS) -> set.leakOhm = sinceS < 0 ? NEVER : 400 / (1 + sinceS / 8)));
    list.put(
        "bring-up",
        other(
            "The supply is turned up by hand in four steps, one every twenty seconds (demo --steps).",
            "larch-d2-steps.json",
            SetValues::new,
            (set, sinceS) -> set.emfV = byHand(sinceS)));
    list.put(
        "bring-up-leaky",
        other(
            "The same with a leaky filter capacitor: the first step is stopped (demo --steps).",
            "larch-d2-steps.json",
            SetValues::new,
            (set, sinceS) -> {
              set.emfV = byHand(sinceS);
              set.leakOhm = 40;
            }));
    list.put(
        "motor-stall",
        larch(
            "The motor is stuck and its worn brushes bridge: its current does not fall after the"
                + " start.",
            set -> {
              set.motorFrictionA = 3;
              set.motorOhm = 9;
            }));
    list.put(
        "creep",
        larch(
                "The current climbs slowly and does not stop climbing.",
                (set, sinceS) -> set.idleOhm = 1000 / (1 + Math.max(0, sinceS) * 0.15))
            .showing(RuleId.CURRENT_CREEP, 17));
    list.put(
        "reversed", larch("The supply is the wrong way round.", set -> set.supplyReversed = true));
    list.put("wrong-supply", larch("The supply is set to 24 V.", set -> set.emfV = 24));
    list.put("no-supply", larch("The supply is off.", set -> set.emfV = 0));
    list.put(
        "radio",
        other(
            "A positive-chassis pocket radio that idles at 9 mA.",
            "ostrel-pocket.json",
            InventedSets::ostrel,
            Script.NONE));
    list.put(
        "radio-short",
        other(
            "The pocket radio's output stage runs away.",
            "ostrel-pocket.json",
            InventedSets::ostrel,
            (set, sinceS) -> set.idleOhm = sinceS > 1.5 ? 60 : 3600));
  }
}
