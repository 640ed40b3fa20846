package firstamp.locate.wire;

import java.util.LinkedHashMap;
import java.util.Map;

/**
 * What was read about one wire and about all places, the latest of each kind: who measures again
 * replaces what was read before.
 */
final class WireReadings {
  private final Map<String, WireStep.WireOhms> wireOhms = new LinkedHashMap<>();
  private final Map<String, WireStep.PlaceOhms> placeOhms = new LinkedHashMap<>();
  private final Map<String, WireStep.PlaceVolts> placeVolts = new LinkedHashMap<>();
  private final WireFacts wires;
  private WireStep.SourceTest sourceTest;
  private WireStep.Swing swing;
  private WireStep.Diode diode;
  private WireStep.Known known;
  private WireStep.WireOhms chassis;

  WireReadings(WireFacts wires, String wire) {
    this.wires = wires;
    for (WireStep dated : wires.steps()) {
      WireStep step = dated.bare();
      if (step.concerns(wire)) {
        take(step);
      }
    }
  }

  private void take(WireStep step) {
    if (step instanceof WireStep.WireOhms ohms) {
      wireOhms.put(ohms.place(), ohms);
      if (wires.place(ohms.place()).kind() == PlaceKind.CHASSIS) {
        chassis = ohms;
        known = null;
      }
    } else if (step instanceof WireStep.PlaceOhms ohms) {
      placeOhms.put(ohms.place(), ohms);
    } else if (step instanceof WireStep.PlaceVolts volts) {
      placeVolts.put(volts.place(), volts);
    } else if (step instanceof WireStep.SourceTest test) {
      sourceTest = test;
    } else if (step instanceof WireStep.Swing read) {
      swing = read;
    } else if (step instanceof WireStep.Diode read) {
      diode = read;
    } else if (step instanceof WireStep.Known said) {
      known = said;
    }
  }

  /** From the free end to places, by place. */
  Map<String, WireStep.WireOhms> wireOhms() {
    return wireOhms;
  }

  /** From places to the chassis, by place. */
  Map<String, WireStep.PlaceOhms> placeOhms() {
    return placeOhms;
  }

  /** Volts of places, by place. */
  Map<String, WireStep.PlaceVolts> placeVolts() {
    return placeVolts;
  }

  /** From the free end to the chassis, null = not read. */
  WireStep.WireOhms chassis() {
    return chassis;
  }

  /** Ohms of the free end to the chassis, the lower way; null = not read. */
  Double chassisOhm() {
    return chassis == null ? null : (Double) chassis.lowerOhm();
  }

  /** Null = not made. */
  WireStep.SourceTest sourceTest() {
    return sourceTest;
  }

  /** Null = not read. */
  WireStep.Swing swing() {
    return swing;
  }

  /** Null = not read. */
  WireStep.Diode diode() {
    return diode;
  }

  /** What the few ohms to the chassis are, null = nobody has said. */
  WireStep.Known known() {
    return known;
  }
}
