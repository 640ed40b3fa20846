package firstamp.locate.wire;

import java.util.ArrayList;
import java.util.List;

/**
 * Wires whose place is not known, the places they may belong to, and all that was seen so far.
 *
 * <p>Immutable; the same steps in the same order give the same answer. Threads can share it.
 *
 * @param set what the trials must not damage
 * @param wires of unknown place
 * @param places they may belong to
 * @param steps in the order they came
 */
public record WireCase(SetFacts set, List<Wire> wires, List<Place> places, List<WireStep> steps) {
  /** Copies the lists and checks the names. */
  public WireCase {
    wires = List.copyOf(wires);
    places = List.copyOf(places);
    steps = List.copyOf(steps);
    if (wires.isEmpty() || places.size() < 2) {
      throw new IllegalArgumentException("one wire and two places are needed at least");
    }
    distinct("wires", wires.stream().map(Wire::name).toList());
    distinct("places", places.stream().map(Place::name).toList());
    for (Wire wire : wires) {
      for (String place : wire.places()) {
        index(places.stream().map(Place::name).toList(), place, "place");
      }
    }
  }

  /**
   * What the trials must not damage.
   *
   * @param name of the set
   * @param chassis pole of the supply that is the chassis: negative or positive
   * @param supplyV highest volts of the supply, magnitude
   * @param runningA limit of the probe
   * @param goodIdleA current of the last good power-up, null = none yet
   */
  public record SetFacts(
      String name, String chassis, double supplyV, double runningA, Double goodIdleA) {
    /** Checks the figures. */
    public SetFacts {
      if (!"negative".equals(chassis) && !"positive".equals(chassis)) {
        throw new IllegalArgumentException(
            "chassis is " + chassis + ", expected negative or positive");
      }
      if (!(supplyV > 0 && supplyV <= 1000 && runningA > 0 && runningA <= 100)
          || (goodIdleA != null && !(goodIdleA > 0 && goodIdleA <= 100))) {
        throw new IllegalArgumentException(
            "supplyV "
                + supplyV
                + ", runningA "
                + runningA
                + ", goodIdleA "
                + goodIdleA
                + ": expected above 0, to 1000 V and 100 A");
      }
    }

    /** Limit of a trial: 1.2 times the last good idle current, never above the probe's. */
    public double trialLimitA() {
      return goodIdleA == null
          ? runningA
          : Math.min(runningA, TrialVerdict.LIMIT_FACTOR * goodIdleA);
    }
  }

  /**
   * A wire.
   *
   * @param name as the person calls it
   * @param colour for finding it again; says little
   * @param build plain, screened, twisted, thick
   * @param reachMm how far its free end reaches, null = not measured
   * @param foundAt where its free end was found
   * @param places it may belong to, empty = all
   */
  public record Wire(
      String name,
      String colour,
      String build,
      Double reachMm,
      String foundAt,
      List<String> places) {
    /** Copies the list. */
    public Wire {
      places = List.copyOf(places);
    }
  }

  /**
   * A place a wire may belong to.
   *
   * @param name as the person calls it
   * @param kind what is there
   * @param ifWrong what goes wrong if the wire does not belong there, null = the usual for its kind
   */
  public record Place(String name, PlaceKind kind, String ifWrong) {}

  /**
   * The case with one more step.
   *
   * @throws IllegalArgumentException a name is not known, or what was read cannot be true beside
   *     what was read before
   */
  public WireCase with(WireStep step) {
    WireCase next = withStored(step);
    for (Wire wire : wires) {
      List<Contradictions.Contradiction> before = Contradictions.of(this, wire.name());
      for (Contradictions.Contradiction one : Contradictions.of(next, wire.name())) {
        if (!before.contains(one)) {
          throw new IllegalArgumentException(new WireWords().contradiction(one));
        }
      }
    }
    return next;
  }

  /** The case with a step that was kept: readings of old that contradict each other stay. */
  WireCase withStored(WireStep step) {
    List<WireStep> more = new ArrayList<>(steps);
    more.add(step);
    WireCase next = new WireCase(set, wires, places, more);
    WireOdds.check(next, step);
    return next;
  }

  /** The case as it was after so many steps. */
  public WireCase upTo(int count) {
    return new WireCase(set, wires, places, steps.subList(0, count));
  }

  /** The case without the last step. */
  public WireCase undo() {
    if (steps.isEmpty()) {
      throw new IllegalArgumentException("there is nothing to take back");
    }
    return upTo(steps.size() - 1);
  }

  /** The case without its steps. */
  public WireCase begin() {
    return upTo(0);
  }

  /** Where a wire stands, in English. */
  public WireAnswer answer(String wire) {
    return answer(wire, new WireWords());
  }

  /** Where a wire stands, in a language. */
  public WireAnswer answer(String wire, WireWords words) {
    return new WirePlan(this, wire, words).answer();
  }

  /** The wire of a name. */
  public Wire wire(String name) {
    return wires.get(index(wires.stream().map(Wire::name).toList(), name, "wire"));
  }

  /** The place of a name. */
  public Place place(String name) {
    return places.get(index(places.stream().map(Place::name).toList(), name, "place"));
  }

  /** Places a wire may belong to. */
  List<Place> placesOf(Wire wire) {
    return places.stream()
        .filter(place -> wire.places().isEmpty() || wire.places().contains(place.name()))
        .toList();
  }

  private static int index(List<String> names, String wanted, String what) {
    int at = names.indexOf(wanted);
    if (at < 0) {
      throw new IllegalArgumentException(
          "there is no " + what + " " + wanted + ", only " + String.join(", ", names));
    }
    return at;
  }

  private static void distinct(String what, List<String> names) {
    if (names.stream().distinct().count() != names.size()) {
      throw new IllegalArgumentException("two " + what + " have one name: " + names);
    }
  }
}
