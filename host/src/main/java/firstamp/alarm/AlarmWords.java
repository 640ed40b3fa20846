package firstamp.alarm;

import firstamp.model.Alarm;
import firstamp.model.RuleId;
import firstamp.model.text.Phrases;
import firstamp.model.text.Worded;
import firstamp.model.text.Wording;
import java.util.Locale;

/** What alarms say, in a language. Safe to share. */
public final class AlarmWords {
  static final String BUNDLE = "firstamp.alarm.alarms";

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

  /** The text of an alarm before any language. */
  public static Worded worded(Alarm alarm) {
    return alarm.words() == null ? Worded.asIs(alarm.text()) : new Worded(BUNDLE, alarm.words());
  }

  /** What was seen, without what to do first; of one that was read from a log the whole text. */
  public String seen(Alarm alarm) {
    return alarm.words() == null
        ? alarm.text()
        : phrases.say(new Wording(alarm.words().phrases().subList(0, 1)));
  }

  /** Whether it says that the head gets nothing at all: then no level of it is known. */
  public static boolean headSilent(Alarm alarm) {
    return alarm.rule().equals(RuleId.HEAD_BELOW_METER.id())
        && alarm.words() != null
        && alarm.words().phrases().get(0).key().startsWith("head-silent");
  }
}
