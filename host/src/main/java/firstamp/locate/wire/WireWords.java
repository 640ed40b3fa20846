package firstamp.locate.wire;

import firstamp.model.text.Numbers;
import firstamp.model.text.Phrases;
import firstamp.model.text.Wording.Phrase;
import java.util.List;
import java.util.Locale;

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
    return phrases.written(ReadingWords.volts(volts));
  }

  String ohm(double ohm) {
    return phrases.written(ReadingWords.ohm(ohm));
  }

  private String say(Phrase phrase) {
    return say(phrase.key(), phrase.values().toArray());
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
    return say(ReadingWords.contradiction(one));
  }

  /** The current through this resistance; no figure where the supply alone decides. */
  String flows(double volts, double ohm) {
    return phrases.written(ReadingWords.flows(volts, ohm));
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
    return say(ReadingWords.of(bare));
  }

  private String trial(WireStep.Trial trial) {
    String verdict = say("verdict." + trial.verdict().id());
    String showed = trial.figures().isEmpty() ? verdict : verdict + ": " + all(trial.figures());
    return trial.powerUp() == null
        ? say("step.trial", trial.wire(), trial.place(), showed)
        : say("step.trial.number", trial.wire(), trial.place(), trial.powerUp(), showed);
  }
}
