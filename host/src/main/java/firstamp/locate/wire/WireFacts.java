package firstamp.locate.wire;

import java.util.List;

/** All that was said and seen about wires whose place is not known; what is concluded needs it. */
interface WireFacts {
  /** What the trials must not damage. */
  SetFacts set();

  /** Wires of unknown place. */
  List<LooseWire> wires();

  /** Places they may belong to. */
  List<LandingPlace> places();

  /** What was done and read, in the order it came. */
  List<WireStep> steps();

  /** The wire of a name. */
  default LooseWire wire(String name) {
    return wires().get(index(wires().stream().map(LooseWire::name).toList(), name, "wire"));
  }

  /** The place of a name. */
  default LandingPlace place(String name) {
    return places().get(index(places().stream().map(LandingPlace::name).toList(), name, "place"));
  }

  /** Places a wire may belong to. */
  default List<LandingPlace> placesOf(LooseWire wire) {
    return places().stream()
        .filter(place -> wire.places().isEmpty() || wire.places().contains(place.name()))
        .toList();
  }

  /**
   * Index of a name in a list.
   *
   * @throws IllegalArgumentException it is not in it
   */
  static int index(List<String> names, String wanted, String what) {
    int at = names.indexOf(wanted);
    if (at < 0) {
      throw WireRefusals.of("no-" + what, wanted, String.join(", ", names));
    }
    return at;
  }
}
