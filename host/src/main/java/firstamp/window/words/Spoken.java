package firstamp.window.words;

import firstamp.account.FigureWords;
import firstamp.account.VerdictSentence;
import firstamp.account.VerdictWords;
import firstamp.alarm.AlarmWords;
import firstamp.model.Alarm;
import firstamp.model.JobSheet;
import firstamp.model.text.Explained;
import firstamp.model.text.Worded;
import java.util.Locale;

/**
 * Says in the person's language what other packages have to say, with the signs of the window.
 * Everything comes as keys with their values. Immutable.
 */
public final class Spoken {
  private final Locale locale;
  private final VerdictWords verdicts;
  private final AlarmWords alarms;
  private final FigureWords figures;

  public Spoken(Locale locale) {
    this.locale = locale;
    verdicts = new VerdictWords(locale);
    alarms = new AlarmWords(locale);
    figures = new FigureWords(locale);
  }

  public String verdict(VerdictSentence sentence) {
    return sentence.key().equals("alarm")
        ? alarm(sentence.alarm())
        : Signs.in(verdicts.of(sentence));
  }

  /** Name of a figure, with its rail. */
  public String figure(String key, int rail, JobSheet sheet) {
    return Signs.in(figures.name(key, rail, sheet));
  }

  /** A figure with its unit. */
  public String value(double value, String unit) {
    return Signs.in(figures.value(value, unit));
  }

  /** What an alarm says. */
  public String alarm(Alarm alarm) {
    return Signs.in(alarms.of(alarm));
  }

  /** What another package says. */
  public String say(Worded words) {
    return Signs.in(words.in(locale));
  }

  /** Why something could not be done. */
  public String failure(Exception failure) {
    return say(Explained.of(failure));
  }
}
