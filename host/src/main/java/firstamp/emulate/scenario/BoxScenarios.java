package firstamp.emulate.scenario;

import static firstamp.emulate.scenario.ScenarioList.larch;

import firstamp.emulate.circuit.Script;
import firstamp.emulate.line.Faults;
import firstamp.model.RuleId;

/** What happens to the probe box, its clips and cable, and to the log. */
public final class BoxScenarios {
  /** About two seconds after the switch has closed. */
  private static final double SILENT_AT_S = 6;

  private BoxScenarios() {}

  public static void addTo(ScenarioList list) {
    list.put(
        "chassis-lost",
        larch(
            "The chassis clip comes off while the set is on.",
            (set, sinceS) -> set.chassisClipOn = sinceS < 1.5));
    list.put(
        "head-clip-off",
        larch(
            "The head clip is joined to nothing; the set itself is well.",
            (set, sinceS) -> set.headClipOn = false));
    list.put(
        "head-clip-falls",
        larch(
                "The head clip comes off while the set records; the set itself is well.",
                (set, sinceS) -> set.headClipOn &= sinceS < 2.5)
            .showing(RuleId.HEAD_BELOW_METER));
    list.put(
        "cable-loose",
        larch("The cable has a bad contact: for a second nothing comes.", Script.NONE)
            .showing(RuleId.PROBE_SILENT)
            .with(Faults.NONE.withSilence(SILENT_AT_S, 1.2)));
    list.put(
        "switch-stuck",
        larch("The switch does not open when it should.", Script.NONE)
            .showing(RuleId.SWITCH_FAILED)
            .with(Faults.NONE.withStuckSwitch()));
    list.put(
        "shunt-half",
        larch("Half of the probe box's shunt is open: every current reads half.", Script.NONE)
            .with(Faults.NONE.withShuntShare(0.5)));
    list.put(
        "disk-full",
        larch(
                "The disk fills up while the set is on: the bench log cannot be written.",
                Script.NONE)
            .showing(RuleId.NOT_LOGGING, 5)
            .withFullDisk());
  }
}
