package firstamp.account;

import firstamp.alarm.AlarmWords;
import firstamp.model.text.Phrases;
import firstamp.model.text.Wording;
import java.util.Locale;
import java.util.regex.Pattern;

/** The sentences of a verdict, in a language. Safe to share. */
public final class VerdictWords {
  static final VerdictWords ENGLISH = new VerdictWords(Locale.ROOT);

  /** A figure as it is written out: -4.13 V, 12 %, 0.05 A2s. */
  private static final Pattern FIGURE = Pattern.compile("-?\\d+[.]\\d+( \\S+)?");

  private final Phrases phrases;
  private final AlarmWords alarms;
  private final boolean comma;

  /** In this language. */
  public VerdictWords(Locale locale) {
    this.phrases = new Phrases("firstamp.account.verdict", locale);
    this.alarms = new AlarmWords(locale);
    this.comma = "de".equals(locale.getLanguage());
  }

  /** A sentence. */
  public String of(VerdictSentence sentence) {
    if (sentence.alarm() != null) {
      return sentence.key().equals("also")
          ? phrases.say("also", alarms.seen(sentence.alarm()))
          : alarms.of(sentence.alarm());
    }
    return phrases.say(sentence.key(), sentence.figures().stream().map(this::written).toArray());
  }

  private Object written(Object figure) {
    if (figure instanceof Wording.Phrase phrase) {
      return new Wording.Phrase(
          phrase.key(), phrase.values().stream().map(this::written).toArray());
    }
    return figure instanceof String text ? figure(text) : figure;
  }

  /** A figure that was written out, with the decimal sign of the language. */
  public String figure(String text) {
    return comma && FIGURE.matcher(text).matches() ? text.replace('.', ',') : text;
  }
}
