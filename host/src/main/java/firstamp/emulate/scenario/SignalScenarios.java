package firstamp.emulate.scenario;

import static firstamp.emulate.scenario.ScenarioList.larch;
import static firstamp.emulate.scenario.ScenarioList.other;

import firstamp.emulate.circuit.Script;
import firstamp.model.RuleId;

/** What happens to meter, head and loudspeaker. */
public final class SignalScenarios {
  private SignalScenarios() {}

  public static void addTo(ScenarioList list) {
    list.put(
        "lost-head",
        larch(
                "The meter moves, the head stays silent: the earphone jack's muting contact"
                    + " sticks.",
                set -> set.headOverMeter = 1e-5)
            .showing(RuleId.HEAD_BELOW_METER));
    list.put("speech", larch("A voice instead of the tone.", set -> set.speech = true));
    list.put(
        "hum",
        larch(
                "Hum reaches the head: a screen is open.",
                set -> {
                  set.headHumRmsV = 1e-3;
                  set.humHz = 50;
                })
            .showing(RuleId.HUM));
    list.put(
        "too-loud",
        larch(
                "The tone is far too strong: the probe box cannot see all of it at the head.",
                set -> set.meterRmsV = 0.85)
            .showing(RuleId.INPUT_CLIPPED));
    list.put(
        "amplifier",
        other(
            "A gramophone amplifier with a clip on its loudspeaker output.",
            "quandel-a4.json",
            InventedSets::quandel,
            Script.NONE));
    list.put(
        "output-offset",
        other(
                "The amplifier's output drifts away from zero: a transistor leaks.",
                "quandel-a4.json",
                InventedSets::quandel,
                (set, sinceS) -> set.outputOffsetV = sinceS > 2 ? 0.6 : 0.02)
            .showing(RuleId.OUTPUT_OFFSET));
  }
}
