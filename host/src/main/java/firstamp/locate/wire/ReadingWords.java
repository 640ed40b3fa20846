package firstamp.locate.wire;

import firstamp.model.text.UnfitValue;
import firstamp.model.text.Worded;
import firstamp.model.text.Wording;
import firstamp.model.text.Wording.Phrase;
import firstamp.model.text.Wording.Quantity;
import java.util.List;

/** What was read at a wire, and what contradicts itself, before any language. */
final class ReadingWords {
  private static final String BUNDLE = "firstamp.locate.wires";

  private ReadingWords() {}

  /** Readings that cannot all be true, and why. */
  static UnfitValue refusal(Contradictions.Contradiction one) {
    return new UnfitValue(new Worded(BUNDLE, new Wording(List.of(contradiction(one)))));
  }

  static Phrase contradiction(Contradictions.Contradiction one) {
    Object steps = of(one.steps().get(0));
    for (WireStep step : one.steps().subList(1, one.steps().size())) {
      steps = new Phrase("readings", steps, of(step));
    }
    return new Phrase("contradict." + one.steps().size(), steps, because(one));
  }

  private static Phrase because(Contradictions.Contradiction one) {
    List<Double> figures = one.figures();
    String key = "contradiction." + one.key();
    if (figures.isEmpty()) {
      return new Phrase(key);
    }
    if (one.key().equals("over-supply")) {
      return new Phrase(key, volts(figures.get(0)), volts(figures.get(1)));
    }
    double ohm = figures.get(1);
    return new Phrase(key, volts(figures.get(0)), ohm(ohm), flows(figures.get(0), ohm));
  }

  static Object volts(Double volts) {
    return volts == null ? new Phrase("open") : new Quantity(volts, "V");
  }

  static Quantity ohm(double ohm) {
    if (ohm >= 1e6) {
      return new Quantity(ohm / 1e6, "Mohm");
    }
    return ohm >= 1000 ? new Quantity(ohm / 1000, "kohm") : new Quantity(ohm, "ohm");
  }

  /** The current through this resistance; no figure where the supply alone decides. */
  static Object flows(double volts, double ohm) {
    return ohm < 0.1 ? new Phrase("flows.all") : Quantity.amps(volts / ohm);
  }

  /** A reading in words. */
  static Phrase of(WireStep dated) {
    WireStep step = dated.bare();
    if (step instanceof WireStep.WireOhms ohms) {
      return ohms.otherWayOhm() == null
          ? new Phrase("step.ohms", ohms.wire(), ohms.place(), ohm(ohms.ohm()))
          : new Phrase(
              "step.ohms.both",
              ohms.wire(),
              ohms.place(),
              ohm(ohms.ohm()),
              ohm(ohms.otherWayOhm()));
    } else if (step instanceof WireStep.PlaceOhms ohms) {
      return new Phrase("step.place-ohms", ohms.place(), ohm(ohms.ohm()));
    } else if (step instanceof WireStep.Diode diode) {
      return new Phrase("step.diode", diode.wire(), volts(diode.forwardV()));
    } else if (step instanceof WireStep.Swing swing) {
      return new Phrase(
          "step.swing", swing.wire(), ohm(swing.firstOhm()), ohm(swing.lastOhm()), swing.seconds());
    } else if (step instanceof WireStep.Known known) {
      return new Phrase("step.known", known.wire(), known.note());
    } else if (step instanceof WireStep.SourceTest test) {
      return new Phrase("step.source", test.wire(), volts(test.aloneV()), volts(test.loadedV()));
    } else if (step instanceof WireStep.PlaceVolts volts) {
      return new Phrase("step.place-volts", volts.place(), volts(volts.volts()));
    }
    throw new IllegalStateException("no words for " + step);
  }
}
