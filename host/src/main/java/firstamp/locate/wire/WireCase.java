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
public record WireCase(
    SetFacts set, List<LooseWire> wires, List<LandingPlace> places, List<WireStep> steps)
    implements WireFacts {
  /** Copies the lists and checks the names. */
  public WireCase {
    wires = List.copyOf(wires);
    places = List.copyOf(places);
    steps = List.copyOf(steps);
    if (wires.isEmpty() || places.size() < 2) {
      throw WireRefusals.of("one-wire");
    }
    distinct("wires", wires.stream().map(LooseWire::name).toList());
    distinct("places", places.stream().map(LandingPlace::name).toList());
    for (LooseWire wire : wires) {
      for (String place : wire.places()) {
        WireFacts.index(places.stream().map(LandingPlace::name).toList(), place, "place");
      }
    }
  }

  /**
   * The case with one more step.
   *
   * @throws IllegalArgumentException a name is not known, or what was read cannot be true beside
   *     what was read before
   */
  public WireCase with(WireStep step) {
    WireCase next = withStored(step);
    for (LooseWire wire : wires) {
      List<Contradictions.Contradiction> before = Contradictions.of(this, wire.name());
      for (Contradictions.Contradiction one : Contradictions.of(next, wire.name())) {
        if (!before.contains(one)) {
          throw ReadingWords.refusal(one);
        }
      }
    }
    return next;
  }

  /** The case with a stored step: older readings that contradict each other stay. */
  WireCase withStored(WireStep step) {
    List<WireStep> more = new ArrayList<>(steps);
    more.add(step);
    WireCase next = new WireCase(set, wires, places, more);
    WireOdds.check(next, step);
    return next;
  }

  /** The case as it was after this many steps. */
  public WireCase upTo(int count) {
    return new WireCase(set, wires, places, steps.subList(0, count));
  }

  /** The case without the last step. */
  public WireCase undo() {
    if (steps.isEmpty()) {
      throw WireRefusals.of("nothing-to-take-back");
    }
    return upTo(steps.size() - 1);
  }

  /** The case without its steps. */
  public WireCase begin() {
    return upTo(0);
  }

  /** State of a wire, in English. */
  public WireAnswer answer(String wire) {
    return answer(wire, new WireWords());
  }

  /** State of a wire, in a language. */
  public WireAnswer answer(String wire, WireWords words) {
    return new WirePlan(this, wire, words).answer();
  }

  private static void distinct(String what, List<String> names) {
    if (names.stream().distinct().count() != names.size()) {
      throw WireRefusals.of("two-" + what, names);
    }
  }
}
