package firstamp.locate.wire;

import firstamp.locate.odds.Information;
import firstamp.locate.odds.OddsWord;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Decides what to do next about one wire.
 *
 * <p>The order of the steps: readings that contradict each other, then a short, then what a wire
 * shows without power, then under power with its end insulated, and only then joined somewhere.
 */
final class WirePlan {
  /** The probe stays off anything above, V. */
  private static final double HIGHEST_V = 60;

  /**
   * A trial shows something if the wire belongs there, and if it does not. Common practice, no
   * source.
   */
  private static final double SHOWS_RIGHT = 0.9;

  private static final double SHOWS_WRONG = 0.05;

  private final WireFacts wires;
  private final LooseWire wire;
  private final WireOdds odds;
  private final double[] shares;
  private final WireWords words;
  private final ShortReading shortReading;

  WirePlan(WireFacts wires, String name, WireWords words) {
    this.wires = wires;
    this.wire = wires.wire(name);
    this.odds = new WireOdds(wires, name);
    this.shares = odds.shares();
    this.words = words;
    this.shortReading = ShortReading.first(wires, odds.readings());
  }

  WireAnswer answer() {
    List<Contradictions.Contradiction> contradictions = Contradictions.of(wires, wire.name());
    if (!contradictions.isEmpty()) {
      return make(WireAnswer.State.MEASURE_AGAIN, words.contradiction(contradictions.get(0)));
    }
    if (shortReading != null) {
      return make(WireAnswer.State.FIND_SHORT, findShort());
    }
    String name = odds.places().get(best()).name();
    List<String> figures = odds.agreeing(name);
    if (figures.size() >= 2) {
      String agree = words.say("belongs", wire.name(), name, words.all(figures));
      return make(WireAnswer.State.BELONGS, agree);
    }
    if (figures.size() == 1) {
      String better = words.say("fits", wire.name(), name, figures.get(0));
      return make(WireAnswer.State.FITS, better);
    }
    if (!odds.checkedCold()) {
      return make(WireAnswer.State.CHECK_COLD, words.say("checkCold", wire.name()));
    }
    if (!odds.sourceTested() && odds.nature() == WireNature.UNKNOWN) {
      return make(WireAnswer.State.SOURCE_TEST, sourceTest());
    }
    return trial();
  }

  private String findShort() {
    double volts = wires.set().supplyV();
    boolean rail = shortReading.place() != null;
    return words.say(
        rail ? "findShort.rail" : "findShort.wire",
        rail ? shortReading.place() : wire.name(),
        words.ohm(shortReading.ohm()),
        words.volts(volts),
        words.flows(volts, shortReading.ohm()),
        words.amps(wires.set().runningA()),
        words.ohm(shortReading.enoughOhm()));
  }

  private String sourceTest() {
    return wires.set().supplyV() > HIGHEST_V
        ? words.say("staysOff", wire.name())
        : words.say("sourceTest", wire.name(), words.amps(wires.set().trialLimitA()));
  }

  private WireAnswer trial() {
    LandingPlace first = odds.places().get(order().get(0));
    if (waits(first.name()) != null || wires.set().supplyV() > HIGHEST_V) {
      return make(WireAnswer.State.NO_PLACE_LEFT, words.say("noPlace", wire.name()));
    }
    WireAnswer.Trial next = trialAt(first);
    String text =
        next.throughOhm() == null
            ? words.say("try.lamp", wire.name(), first.name(), flows(next), why(first))
            : words.say(
                "try.resistor",
                wire.name(),
                first.name(),
                next.throughOhm(),
                flows(next),
                why(first));
    return make(WireAnswer.State.TRY, text, next);
  }

  /** What can flow there, and what the limit of the trial makes of it. */
  private String flows(WireAnswer.Trial next) {
    String limit = words.amps(next.limitA());
    String heatW = words.number(next.worstW());
    if (next.throughOhm() == null) {
      return words.say("flow.set", limit, heatW);
    }
    String worst = words.amps(next.worstA());
    return next.worstA() > next.limitA()
        ? words.say("flow.over", limit, worst, heatW)
        : words.say("flow.under", worst, heatW, limit);
  }

  private String why(LandingPlace place) {
    String harm = words.say(place.kind().harm() < PlaceKind.RISKY ? "why.least" : "why.more");
    return place.ifWrong() == null ? harm : words.say("why.wrong", harm, place.ifWrong());
  }

  private WireAnswer.Trial trialAt(LandingPlace place) {
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

  /** Why a place is not to be tried now, null = it can be. */
  private String waits(String place) {
    String struck = odds.struck(place);
    if (struck != null) {
      Double ohm = odds.readings().chassisOhm();
      return ohm == null
          ? words.say(struck)
          : words.say(struck, words.ohm(ohm), words.flows(wires.set().supplyV(), ohm));
    }
    if (odds.apart(place)) {
      return words.say("reason.apart");
    }
    return triedInVain(place) ? words.say("reason.in-vain") : null;
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
    LandingPlace place = odds.places().get(at);
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

  private WireAnswer make(WireAnswer.State state, String sentence) {
    return make(state, sentence, null);
  }

  private WireAnswer make(WireAnswer.State state, String sentence, WireAnswer.Trial next) {
    return new WireAnswer(
        wire.name(),
        state,
        sentence,
        new WireWarnings(wires, wire.name(), odds, words).all(),
        order().stream().map(this::placeOdds).toList(),
        next,
        state == WireAnswer.State.FIND_SHORT ? shortReading : null);
  }
}
