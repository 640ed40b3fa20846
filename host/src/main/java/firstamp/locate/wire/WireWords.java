package firstamp.locate.wire;

import firstamp.model.text.Numbers;
import firstamp.model.text.Phrases;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** Sentences about wires of unknown place, in one language. Safe to share. */
public final class WireWords {
  private final Phrases phrases;
  private final boolean comma;

  /** In English, the language of log and command line. */
  public WireWords() {
    this(Locale.ROOT);
  }

  /** In a language. */
  public WireWords(Locale locale) {
    phrases = new Phrases("firstamp.locate.wires", locale);
    comma = Locale.GERMAN.getLanguage().equals(locale.getLanguage());
  }

  String say(String key, Object... values) {
    return phrases.say(key, values);
  }

  String amps(double amps) {
    return figure(Numbers.amps(amps));
  }

  String number(double value) {
    return figure(Numbers.text(value));
  }

  String volts(Double volts) {
    return volts == null ? say("open") : number(volts) + " V";
  }

  String ohm(double ohm) {
    if (ohm >= 1e6) {
      return number(ohm / 1e6) + " Mohm";
    }
    return ohm >= 1000 ? number(ohm / 1000) + " kohm" : number(ohm) + " ohm";
  }

  private String figure(String text) {
    return comma ? text.replace('.', ',') : text;
  }

  /** Names in a row: one and another. */
  String all(List<String> names) {
    String all = names.get(0);
    for (String name : names.subList(1, names.size())) {
      all = say("and", all, name);
    }
    return all;
  }

  /** Readings that cannot all be true, and why. */
  String contradiction(Contradictions.Contradiction one) {
    String steps = one.steps().stream().map(this::step).collect(Collectors.joining("; "));
    return say("contradict." + one.steps().size(), steps, because(one));
  }

  private String because(Contradictions.Contradiction one) {
    List<Double> figures = one.figures();
    String key = "contradiction." + one.key();
    if (figures.isEmpty()) {
      return say(key);
    }
    if (one.key().equals("over-supply")) {
      return say(key, volts(figures.get(0)), volts(figures.get(1)));
    }
    double ohm = figures.get(1);
    return say(key, volts(figures.get(0)), ohm(ohm), flows(figures.get(0), ohm));
  }

  /** The current through this resistance; no figure where the supply alone decides. */
  String flows(double volts, double ohm) {
    return ohm < 0.1 ? say("flows.all") : amps(volts / ohm);
  }

  /** A step in words. */
  public String step(WireStep step) {
    WireStep bare = step.bare();
    if (bare instanceof WireStep.Clue clue) {
      String side = clue.fits() ? "step.clue.for" : "step.clue.against";
      return say(side, clue.wire(), say("clue." + clue.kind().id()), clue.place());
    } else if (bare instanceof WireStep.Hunch hunch) {
      return say("step.hunch", hunch.wire(), say("hunch." + hunch.word()), hunch.place());
    } else if (bare instanceof WireStep.Moved moved) {
      return moved.note() == null
          ? say("step.moved", moved.wire(), moved.place())
          : say("step.moved.note", moved.wire(), moved.place(), moved.note());
    } else if (bare instanceof WireStep.Photograph photograph) {
      return say("step.photograph", photograph.wire(), photograph.path());
    } else if (bare instanceof WireStep.Trial trial) {
      return trial(trial);
    }
    return reading(bare);
  }

  private String reading(WireStep step) {
    if (step instanceof WireStep.WireOhms ohms) {
      return ohms.otherWayOhm() == null
          ? say("step.ohms", ohms.wire(), ohms.place(), ohm(ohms.ohm()))
          : say(
              "step.ohms.both",
              ohms.wire(),
              ohms.place(),
              ohm(ohms.ohm()),
              ohm(ohms.otherWayOhm()));
    } else if (step instanceof WireStep.PlaceOhms ohms) {
      return say("step.place-ohms", ohms.place(), ohm(ohms.ohm()));
    } else if (step instanceof WireStep.Diode diode) {
      return say("step.diode", diode.wire(), volts(diode.forwardV()));
    } else if (step instanceof WireStep.Swing swing) {
      String seconds = number(swing.seconds());
      return say("step.swing", swing.wire(), ohm(swing.firstOhm()), ohm(swing.lastOhm()), seconds);
    } else if (step instanceof WireStep.Known known) {
      return say("step.known", known.wire(), known.note());
    } else if (step instanceof WireStep.SourceTest test) {
      return say("step.source", test.wire(), volts(test.aloneV()), volts(test.loadedV()));
    } else if (step instanceof WireStep.PlaceVolts volts) {
      return say("step.place-volts", volts.place(), volts(volts.volts()));
    }
    throw new IllegalStateException("no words for " + step);
  }

  private String trial(WireStep.Trial trial) {
    String verdict = say("verdict." + trial.verdict().id());
    String showed = trial.figures().isEmpty() ? verdict : verdict + ": " + all(trial.figures());
    return trial.powerUp() == null
        ? say("step.trial", trial.wire(), trial.place(), showed)
        : say("step.trial.number", trial.wire(), trial.place(), trial.powerUp(), showed);
  }
}
