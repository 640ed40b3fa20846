package firstamp.locate;

import firstamp.model.Numbers;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;

/** Decides what to do next about one wire, and says it. */
final class WirePlan {
  /** The probe stays off anything above, V. */
  private static final double HIGHEST_V = 60;

  /** A resistance to the chassis under so many times supply over limit is suspect. */
  private static final double SUSPECT_FACTOR = 3;

  /** A trial shows something if the wire belongs there, and if it does not. */
  private static final double SHOWS_RIGHT = 0.9;

  private static final double SHOWS_WRONG = 0.05;

  private final WireCase wires;
  private final WireCase.Wire wire;
  private final WireOdds odds;
  private final double[] shares;

  WirePlan(WireCase wires, String name) {
    this.wires = wires;
    this.wire = wires.wire(name);
    this.odds = new WireOdds(wires, name);
    this.shares = odds.shares();
  }

  WireAnswer answer() {
    List<Integer> order = order();
    List<WireAnswer.PlaceOdds> places = order.stream().map(this::placeOdds).toList();
    List<String> warnings = warnings();
    int best = best();
    List<String> figures = odds.agreeing(odds.places().get(best).name());
    String name = odds.places().get(best).name();
    if (figures.size() >= 2) {
      return make(
          WireAnswer.State.BELONGS,
          wire.name() + " belongs to " + name + ": " + String.join(" and ", figures) + " agree.",
          warnings,
          places,
          null);
    }
    if (figures.size() == 1) {
      return make(
          WireAnswer.State.FITS,
          wire.name()
              + " fits at "
              + name
              + " ("
              + figures.get(0)
              + " became better). Confirm it by a second, different figure before it counts.",
          warnings,
          places,
          null);
    }
    if (!odds.checkedCold()) {
      return make(
          WireAnswer.State.CHECK_COLD,
          "Supply off, capacitors discharged: read the ohms of "
              + wire.name()
              + " to the chassis, each rail and each place, both ways. Never across a head or a"
              + " level meter.",
          warnings,
          places,
          null);
    }
    if (!odds.sourceTested() && odds.nature() == WireNature.UNKNOWN) {
      return make(WireAnswer.State.SOURCE_TEST, sourceTest(), warnings, places, null);
    }
    return trial(order, places, warnings);
  }

  private String sourceTest() {
    if (wires.set().supplyV() > HIGHEST_V) {
      return "Above 60 V the probe stays off the set. Leave " + wire.name() + " insulated.";
    }
    return "Is it a source, a load or dead? Insulate the end of "
        + wire.name()
        + ", clips on first, then power with the limit at "
        + Numbers.amps(wires.set().trialLimitA())
        + " for 10 s: volts on it alone, then with 10 kohm to the chassis.";
  }

  private WireAnswer trial(
      List<Integer> order, List<WireAnswer.PlaceOdds> places, List<String> warnings) {
    int first = order.get(0);
    String name = odds.places().get(first).name();
    if (waits(name) != null || wires.set().supplyV() > HIGHEST_V) {
      return make(
          WireAnswer.State.NO_PLACE_LEFT,
          "No place is left to try "
              + wire.name()
              + " at. Leave its end insulated; look for places not on the list, or for a picture.",
          warnings,
          places,
          null);
    }
    WireAnswer.Trial next = trialAt(odds.places().get(first));
    String through =
        next.throughOhm() == null
            ? "through a lamp or the supply's own limit"
            : "through " + next.throughOhm() + " ohm";
    String text =
        "Try "
            + wire.name()
            + " at "
            + name
            + " next: write down what you expect, supply off and discharged, join it "
            + through
            + ", switch on for 10 s. "
            + flows(next)
            + " "
            + why(odds.places().get(first));
    return make(WireAnswer.State.TRY, text, warnings, places, next);
  }

  /** What can flow there, and what the limit of the trial makes of it. */
  private static String flows(WireAnswer.Trial next) {
    String limit = Numbers.amps(next.limitA());
    String heat = " (" + Numbers.text(next.worstW()) + " W)";
    if (next.throughOhm() == null) {
      return "Set the lamp or the supply so that no more than " + limit + heat + " flows there.";
    }
    String worst = Numbers.amps(next.worstA()) + heat;
    return next.worstA() > next.limitA()
        ? "The limit of this trial is "
            + limit
            + ", once the rails have settled: above it the supply is switched off. Until then the"
            + " resistor lets through "
            + worst
            + " if the guess is wrong in the worst way."
        : "If the guess is wrong in the worst way, the resistor lets through "
            + worst
            + ": under the limit of this trial, "
            + limit
            + ", so it stays on.";
  }

  private static String why(WireCase.Place place) {
    String harm =
        place.kind().harm() < PlaceKind.RISKY
            ? "A wrong guess does the least harm there."
            : "Nothing safer is left.";
    return place.ifWrong() == null ? harm : harm + " If wrong: " + place.ifWrong() + ".";
  }

  private WireAnswer.Trial trialAt(WireCase.Place place) {
    double volts = wires.set().supplyV();
    double limitA = wires.set().trialLimitA();
    Integer ohm = place.kind().throughOhm();
    if (ohm == null) {
      return new WireAnswer.Trial(place.name(), null, limitA, volts * limitA, limitA);
    }
    return new WireAnswer.Trial(place.name(), ohm, volts / ohm, volts * volts / ohm, limitA);
  }

  /** Harm first, then what is learnt; what cannot be tried last. */
  private List<Integer> order() {
    List<Integer> order = new ArrayList<>();
    for (int at = 0; at < odds.places().size(); at++) {
      order.add(at);
    }
    order.sort(
        Comparator.comparing((Integer at) -> waits(odds.places().get(at).name()) != null)
            .thenComparing(at -> odds.places().get(at).kind().harm())
            .thenComparing(at -> -learntBits(shares[at])));
    return order;
  }

  /** What a trial at a place of this share is expected to tell about it, bit. */
  static double learntBits(double share) {
    return Information.gainBits(
        new double[] {share, 1 - share},
        new double[][] {{SHOWS_RIGHT, 1 - SHOWS_RIGHT}, {SHOWS_WRONG, 1 - SHOWS_WRONG}});
  }

  private String waits(String place) {
    if (odds.struck(place) != null) {
      return odds.struck(place);
    }
    if (odds.apart(place)) {
      return "its volts differ from those of the wire; do not join them";
    }
    return triedInVain(place) ? "it was tried there and nothing became better" : null;
  }

  private boolean triedInVain(String place) {
    return wires.steps().stream()
        .anyMatch(
            step ->
                step.bare() instanceof WireStep.Trial trial
                    && trial.wire().equals(wire.name())
                    && trial.place().equals(place)
                    && trial.verdict() != TrialVerdict.BETTER);
  }

  private WireAnswer.PlaceOdds placeOdds(int at) {
    WireCase.Place place = odds.places().get(at);
    OddsWord word =
        odds.struck(place.name()) != null
            ? OddsWord.STRUCK_OUT
            : OddsWord.of(shares[at], shares.length);
    return new WireAnswer.PlaceOdds(
        place.name(), place.kind().harm(), shares[at], word, waits(place.name()));
  }

  private int best() {
    int best = 0;
    for (int at = 1; at < odds.places().size(); at++) {
      int more =
          odds.agreeing(odds.places().get(at).name()).size()
              - odds.agreeing(odds.places().get(best).name()).size();
      if (more > 0 || (more == 0 && shares[at] > shares[best])) {
        best = at;
      }
    }
    return best;
  }

  private List<String> warnings() {
    List<String> warnings = new ArrayList<>();
    if (odds.chassisOhm() != null && odds.nature() != WireNature.CHASSIS) {
      warn(warnings, wire.name(), odds.chassisOhm());
    }
    for (Map.Entry<String, Double> read : odds.placeOhms().entrySet()) {
      if (wires.place(read.getKey()).kind() == PlaceKind.RAIL) {
        warn(warnings, read.getKey(), read.getValue());
      }
    }
    if (odds.nature() == WireNature.CHASSIS) {
      warnings.add(
          wire.name()
              + " is on the chassis: joined to a rail it is a short, "
              + Numbers.text(wires.set().supplyV())
              + " V straight to the limit of "
              + Numbers.amps(wires.set().runningA())
              + ".");
    }
    if ("positive".equals(wires.set().chassis())) {
      warnings.add(
          "The chassis of this set is positive: colour charts for a negative chassis mislead"
              + " here. Measure.");
    }
    return warnings;
  }

  private void warn(List<String> warnings, String what, double ohm) {
    double volts = wires.set().supplyV();
    double limitA = wires.set().runningA();
    if (ohm * limitA < volts) {
      String flows = ohm < 0.1 ? "no less than the supply gives" : Numbers.amps(volts / ohm);
      warnings.add(
          Numbers.text(ohm)
              + " ohm from "
              + what
              + " to the chassis: at "
              + Numbers.text(volts)
              + " V that is "
              + flows
              + ", your limit is "
              + Numbers.amps(limitA)
              + ". Do not power, or limit to "
              + Numbers.amps(wires.set().trialLimitA())
              + " and expect it to switch off.");
    } else if (ohm * limitA < SUSPECT_FACTOR * volts) {
      warnings.add(
          Numbers.text(ohm)
              + " ohm from "
              + what
              + " to the chassis is suspect: at "
              + Numbers.text(volts)
              + " V that is "
              + Numbers.amps(volts / ohm)
              + " of your limit of "
              + Numbers.amps(limitA)
              + ".");
    }
  }

  private WireAnswer make(
      WireAnswer.State state,
      String sentence,
      List<String> warnings,
      List<WireAnswer.PlaceOdds> places,
      WireAnswer.Trial next) {
    return new WireAnswer(wire.name(), state, sentence, warnings, places, next);
  }
}
