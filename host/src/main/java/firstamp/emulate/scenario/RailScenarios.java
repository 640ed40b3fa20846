package firstamp.emulate.scenario;

import static firstamp.emulate.scenario.ScenarioList.larch;
import static firstamp.emulate.scenario.ScenarioList.mains;
import static firstamp.emulate.scenario.ScenarioList.other;

import firstamp.emulate.circuit.Script;
import firstamp.model.RuleId;

/** What happens to the rails. */
public final class RailScenarios {
  private static final String PLAIN = "larch-d2-plain.json";

  private RailScenarios() {}

  public static void addTo(ScenarioList list) {
    onTheBench(list);
    onMains(list);
  }

  private static void onTheBench(ScenarioList list) {
    list.put(
        "rail-late",
        larch(
                "The rail comes up slowly: the dropper resistor has gone high.",
                set -> {
                  set.dropperOhm = 110;
                  set.stagesSiemens = 0.0015;
                  set.railLoadOhm = 330;
                })
            .showing(RuleId.RAIL_LATE));
    list.put(
        "rail-low",
        larch("The rail stays low: a stage draws too much.", set -> set.stagesSiemens = 0.03));
    list.put(
        "rail-sags",
        larch(
                "The rail comes up and then sags: a stage draws more and more.",
                (set, sinceS) ->
                    set.stagesSiemens = 0.0104 + 0.012 * Math.max(0, Math.min(1, sinceS - 2)))
            .showing(RuleId.RAIL_WINDOW));
    list.put(
        "over-voltage",
        larch(
                "The stages on the rail stop drawing and the rail runs up.",
                (set, sinceS) -> {
                  boolean gone = sinceS > 1;
                  set.stagesSiemens = gone ? 0 : 0.0104;
                  set.railLoadOhm = gone ? 1500 : 220;
                })
            .showing(RuleId.OVER_VOLTAGE));
    list.put(
        "rail-drops",
        larch(
                "The rail falls while the supply stays: a capacitor on it breaks down.",
                (set, sinceS) -> {
                  if (sinceS > 2) {
                    set.railShortOhm = 12; // for good, also when the switch is open again
                  }
                })
            .showing(RuleId.RAIL_NOT_FOLLOWING));
    list.put(
        "rail-unsteady",
        larch("The rail jumps about: a contact crackles.", crackling())
            .showing(RuleId.RAIL_UNSTEADY));
    list.put(
        "wrong-polarity",
        larch("The rail is on the wrong side of the chassis.", set -> set.railSign = -1)
            .showing(RuleId.WRONG_POLARITY));
    list.put(
        "rail-climbs",
        larch(
                "After switching off the rail climbs again: something else feeds it.",
                (set, sinceS) -> set.railFedA = sinceS < -1.2 && sinceS > -60 ? 0.04 : 0)
            .showing(RuleId.RAIL_CLIMBING));
    list.put(
        "clip-off",
        other(
                "The rail's clip comes off.",
                PLAIN,
                InventedSets::larch,
                (set, sinceS) -> set.railClipOn = sinceS < 2)
            .showing(RuleId.CLIP_OFF));
  }

  private static void onMains(ScenarioList list) {
    list.put("mains", mains("The dictation unit on its own mains transformer.", set -> {}));
    list.put(
        "tired-filter",
        mains(
                "The reservoir capacitor has lost most of its capacitance: ripple on rail and"
                    + " head.",
                set -> {
                  // Mains a little high: the rails come up in time whatever the box reads.
                  set.emfV = 15.3;
                  set.supplyFarad = 470e-6;
                  set.filterFarad = 150e-6;
                  set.railFarad = 100e-6;
                  set.headHumRmsV = 0.2e-3;
                })
            .showing(RuleId.RIPPLE));
    list.put(
        "ripple-too-low",
        mains(
                "The reservoir voltage is high and has no ripple: an adaptor feeds the set instead.",
                set -> {
                  set.rectifierPaths = 0;
                  set.emfV = 13.8;
                  set.supplyOhm = 0.5;
                })
            .showing(RuleId.RIPPLE_TOO_LOW));
  }

  /** Makes and breaks about fourteen times a second, in no rhythm that could pass for hum. */
  private static Script crackling() {
    return (set, sinceS) -> {
      if (sinceS > 1) {
        double phase = 2 * Math.PI * 14 * sinceS + 1.5 * Math.sin(2 * Math.PI * 2.3 * sinceS);
        set.stagesSiemens = 0;
        set.railLoadOhm = Math.sin(phase) > 0 ? 58 : 1e6;
      } else if (sinceS < 0 && sinceS > -60) {
        // Whatever the contact does at the opening: a rail without its load would climb.
        set.railLoadOhm = 58;
      }
    };
  }
}
