package firstamp.alarm;

import firstamp.model.Alarm;
import firstamp.model.Phrases;
import java.util.Locale;

/** What alarms say, in a language. Safe to share. */
public final class AlarmWords {
  private static final String BUNDLE = "firstamp.alarm.alarms";

  /** The language of the log. */
  static final Phrases ENGLISH = new Phrases(BUNDLE);

  private final Phrases phrases;

  /** In this language. */
  public AlarmWords(Locale locale) {
    this.phrases = new Phrases(BUNDLE, locale);
  }

  /** The text of an alarm; one that was read from a log is in English, as it was kept. */
  public String of(Alarm alarm) {
    return alarm.words() == null ? alarm.text() : phrases.say(alarm.words());
  }
}
