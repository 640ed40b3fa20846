package firstamp.locate.wire;

import firstamp.locate.odds.Information;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;

/**
 * Odds of the places of one wire, from all steps about it.
 *
 * <p>Factors multiply, in logs. "Somewhere else" is one of the explanations, so that no place wins
 * only because all others lost. The factors and limits here are common practice, no source.
 */
final class WireOdds {
  /** Share of "somewhere else" before anything is seen. */
  private static final double ELSEWHERE_SHARE = 0.1;

  /** Below this a wire counts as joined to what it was read against, ohm. */
  static final double JOINED_OHM = 1;

  /** Volts that stay within this share under 10 kohm come from a source. */
  private static final double STAYS_SHARE = 0.8;

  /** Volts under which a wire counts as dead. */
  private static final double DEAD_V = 0.1;

  /** Within this of each other two points pass little current when joined. */
  static final double SAME_V = 0.1;

  private static final double STRUCK_FACTOR = 0.005;

  private final WireFacts wires;
  private final LooseWire wire;
  private final WireReadings readings;
  private final List<LandingPlace> places;
  private final Map<String, String> struck = new LinkedHashMap<>();
  private final Map<String, TreeSet<String>> agreeing = new LinkedHashMap<>();
  private final List<String> apart = new ArrayList<>();
  private final double[] logs;
  private WireNature nature = WireNature.UNKNOWN;
  private boolean checkedCold;
  private boolean sourceTested;
  private Double wireVolts;

  WireOdds(WireFacts wires, String name) {
    this.wires = wires;
    this.wire = wires.wire(name);
    this.readings = new WireReadings(wires, name);
    this.places = wires.placesOf(wire);
    this.logs = new double[places.size() + 1];
    double even = (1 - ELSEWHERE_SHARE) / places.size();
    for (int at = 0; at < places.size(); at++) {
      logs[at] = StrictMath.log(even);
    }
    logs[places.size()] = StrictMath.log(ELSEWHERE_SHARE);
    for (WireStep step : wires.steps()) {
      take(step.bare());
    }
    judgeByNature();
  }

  /** Refuses a step that names what the case does not have. */
  static void check(WireFacts wires, WireStep step) {
    if (step.place() != null) {
      wires.place(step.place());
    }
    if (step.wire() != null) {
      wires.wire(step.wire());
      new WireOdds(wires, step.wire());
    }
  }

  private void take(WireStep step) {
    if (!wire.name().equals(step.wire())) {
      return;
    }
    if (step instanceof WireStep.Clue clue) {
      double factor = clue.kind().factor();
      times(clue.place(), clue.fits() ? factor : 1 / factor);
    } else if (step instanceof WireStep.Hunch hunch) {
      times(hunch.place(), hunch.factor());
    } else if (step instanceof WireStep.WireOhms ohms) {
      takeOhms(ohms);
    } else if (step instanceof WireStep.Diode) {
      checkedCold = true;
      times(PlaceKind.SIGNAL, 2);
      times(PlaceKind.BASE, 2);
    } else if (step instanceof WireStep.Swing swing) {
      checkedCold = true;
      if (swing.lastOhm() > 2 * swing.firstOhm()) {
        // A capacitor at the far end: a coupling or a filter, no return.
        times(PlaceKind.SIGNAL, 2);
        times(PlaceKind.RAIL, 2);
        times(PlaceKind.CHASSIS, 0.3);
      }
    } else if (step instanceof WireStep.SourceTest test) {
      takeSourceTest(test);
    } else if (step instanceof WireStep.Trial trial) {
      takeTrial(trial);
    }
  }

  private void takeOhms(WireStep.WireOhms ohms) {
    checkedCold = true;
    PlaceKind kind = wires.place(ohms.place()).kind();
    if (ohms.lowerOhm() >= JOINED_OHM) {
      return;
    }
    if (kind == PlaceKind.CHASSIS) {
      nature = WireNature.CHASSIS;
    } else if (kind == PlaceKind.RAIL) {
      nature = WireNature.SOURCE;
    } else if (kind == PlaceKind.SIGNAL || kind == PlaceKind.BASE) {
      nature = WireNature.SIGNAL;
    }
    // The far end is there already; the free end belongs to another place of the same net.
    times(ohms.place(), 0.3);
  }

  private void takeSourceTest(WireStep.SourceTest test) {
    sourceTested = true;
    wireVolts = test.aloneV();
    double alone = Math.abs(test.aloneV());
    if (alone < DEAD_V) {
      nature = nature == WireNature.CHASSIS ? nature : WireNature.LOAD;
    } else if (Math.abs(test.loadedV()) >= STAYS_SHARE * alone) {
      nature = WireNature.SOURCE;
    } else {
      nature = WireNature.SIGNAL;
    }
  }

  private void takeTrial(WireStep.Trial trial) {
    times(trial.place(), trial.verdict().factor());
    TreeSet<String> figures = agreeing.computeIfAbsent(trial.place(), place -> new TreeSet<>());
    switch (trial.verdict()) {
      case BETTER -> figures.addAll(trial.figures().isEmpty() ? List.of("seen") : trial.figures());
      case SHORT -> {
        figures.clear();
        struck.put(trial.place(), "reason.tried-short");
      }
      case OVER_DRAW -> {
        figures.clear();
        struck.put(trial.place(), "reason.tried-over");
      }
      default -> figures.clear();
    }
  }

  private void judgeByNature() {
    Double chassisOhm = readings.chassisOhm();
    boolean low = chassisOhm != null && chassisOhm >= JOINED_OHM && overdraws(chassisOhm);
    for (LandingPlace place : places) {
      times(place.name(), nature.factor(place.kind()));
      String reason = nature.forbids(place.kind());
      if (reason == null && low && place.kind() == PlaceKind.RAIL) {
        reason = "reason.known-low";
      }
      if (reason != null) {
        struck.putIfAbsent(place.name(), reason);
        times(place.name(), STRUCK_FACTOR);
      }
      WireStep.PlaceOhms ohms = readings.placeOhms().get(place.name());
      if (nature == WireNature.SOURCE && ohms != null && overdraws(ohms.ohm())) {
        struck.putIfAbsent(place.name(), "reason.too-low");
        times(place.name(), 0.1);
      }
      WireStep.PlaceVolts volts = readings.placeVolts().get(place.name());
      if (wireVolts != null && volts != null && nature == WireNature.SOURCE) {
        boolean same = Math.abs(wireVolts - volts.volts()) <= SAME_V;
        times(place.name(), same ? 2 : 0.3);
        if (!same) {
          apart.add(place.name());
        }
      }
    }
  }

  private boolean overdraws(double ohm) {
    return ohm * wires.set().runningA() < wires.set().supplyV();
  }

  private void times(PlaceKind kind, double factor) {
    for (LandingPlace place : places) {
      if (place.kind() == kind) {
        times(place.name(), factor);
      }
    }
  }

  private void times(String name, double factor) {
    for (int at = 0; at < places.size(); at++) {
      if (places.get(at).name().equals(name)) {
        logs[at] += StrictMath.log(factor);
      }
    }
  }

  List<LandingPlace> places() {
    return places;
  }

  /** Shares of the places, in their order; the last is "somewhere else". */
  double[] shares() {
    return Information.shares(logs);
  }

  /** Key of the reason why a place is excluded, null = it is not. */
  String struck(String place) {
    return struck.get(place);
  }

  /** Whether the volts of wire and place are too far apart to join them. */
  boolean apart(String place) {
    return apart.contains(place);
  }

  /** Independent figures that became better with the wire at a place. */
  List<String> agreeing(String place) {
    return agreeing.containsKey(place) ? List.copyOf(agreeing.get(place)) : List.of();
  }

  WireNature nature() {
    return nature;
  }

  boolean checkedCold() {
    return checkedCold;
  }

  boolean sourceTested() {
    return sourceTested;
  }

  /** What was read last of each kind. */
  WireReadings readings() {
    return readings;
  }
}
