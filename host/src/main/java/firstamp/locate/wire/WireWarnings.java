package firstamp.locate.wire;

import java.util.ArrayList;
import java.util.List;

/** What to mind about a wire before the set is powered, whatever the next step is. */
final class WireWarnings {
  /**
   * A resistance to the chassis under this multiple of supply volts over limit is suspect. Common
   * practice, no source.
   */
  private static final double SUSPECT_FACTOR = 3;

  private final WireFacts wires;
  private final String wire;
  private final WireOdds odds;
  private final WireWords words;
  private final List<String> warnings = new ArrayList<>();

  WireWarnings(WireFacts wires, String wire, WireOdds odds, WireWords words) {
    this.wires = wires;
    this.wire = wire;
    this.odds = odds;
    this.words = words;
  }

  /** Most urgent first. */
  List<String> all() {
    Double chassisOhm = odds.readings().chassisOhm();
    if (chassisOhm != null && odds.nature() != WireNature.CHASSIS) {
      suspect(wire, chassisOhm);
    }
    for (WireStep.PlaceOhms read : odds.readings().placeOhms().values()) {
      if (wires.place(read.place()).kind() == PlaceKind.RAIL) {
        suspect(read.place(), read.ohm());
      }
    }
    if (odds.nature() == WireNature.CHASSIS) {
      SetFacts set = wires.set();
      warnings.add(
          words.say(
              "warning.chassis", wire, words.volts(set.supplyV()), words.amps(set.runningA())));
    }
    if ("positive".equals(wires.set().chassis())) {
      warnings.add(words.say("warning.positive"));
    }
    return warnings;
  }

  /** Too little for a sound rail, and too much for a step of its own. */
  private void suspect(String what, double ohm) {
    double volts = wires.set().supplyV();
    double limitA = wires.set().runningA();
    if (ohm * limitA >= volts && ohm * limitA < SUSPECT_FACTOR * volts) {
      warnings.add(
          words.say(
              "warning.suspect",
              what,
              words.ohm(ohm),
              words.volts(volts),
              words.amps(volts / ohm),
              words.amps(limitA)));
    }
  }
}
