package firstamp.trip;

import firstamp.model.JobSheet;
import firstamp.model.Numbers;
import java.text.MessageFormat;
import java.util.Locale;
import java.util.ResourceBundle;

/** What an alarm says: what was seen, the limit, what to do first. */
final class AlarmTexts {
  private static final ResourceBundle WORDS =
      ResourceBundle.getBundle("firstamp.trip.alarms", Locale.ROOT);

  private final String label;
  private final String afterOff;

  AlarmTexts(JobSheet sheet, String label) {
    this.label = label;
    this.afterOff = OffWords.after(sheet);
  }

  /**
   * The sentences under a key; numbers are written with three digits.
   *
   * @param off whether the switch opened, or opens because of this
   */
  String text(String key, boolean off, Object... values) {
    Object[] written = new Object[values.length];
    for (int k = 0; k < values.length; k++) {
      written[k] = values[k] instanceof Double number ? Numbers.text(number) : values[k];
    }
    StringBuilder text = new StringBuilder();
    text.append(MessageFormat.format(WORDS.getString(key + ".seen"), written));
    if (label != null && !label.isBlank()) {
      text.append(' ').append(MessageFormat.format(WORDS.getString("label"), label));
    }
    if (WORDS.containsKey(key + ".first")) {
      text.append(' ').append(MessageFormat.format(WORDS.getString(key + ".first"), written));
    }
    if (off && !afterOff.isEmpty()) {
      text.append(' ').append(afterOff);
    }
    return text.toString();
  }

  /** A single phrase. */
  static String word(String key) {
    return WORDS.getString(key);
  }
}
