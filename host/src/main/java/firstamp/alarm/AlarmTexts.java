package firstamp.alarm;

import firstamp.model.JobSheet;
import firstamp.model.Numbers;
import java.text.MessageFormat;
import java.util.Locale;
import java.util.ResourceBundle;

/** What an alarm says: what was seen, the limit, what to do first. */
final class AlarmTexts {
  private static final ResourceBundle WORDS =
      ResourceBundle.getBundle("firstamp.alarm.alarms", Locale.ROOT);

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
    StringBuilder text = new StringBuilder();
    text.append(phrase(key + ".seen", values));
    if (label != null && !label.isBlank()) {
      text.append(' ').append(MessageFormat.format(WORDS.getString("label"), label));
    }
    if (WORDS.containsKey(key + ".first")) {
      text.append(' ').append(phrase(key + ".first", values));
    }
    if (off && !afterOff.isEmpty()) {
      text.append(' ').append(afterOff);
    }
    return text.toString();
  }

  /**
   * A limit as it acts, and as the sheet states it where that is another number. A current with its
   * unit; the rest gets its unit from the sentence.
   */
  String limit(double stated, double acting, String unit) {
    if (unit.equals("A")) {
      String said = Numbers.amps(stated);
      String acts = inUnitOf(stated, acting);
      return acting <= 0 || said.equals(acts) ? said : phrase("acting", acts, said);
    }
    String said = Numbers.text(stated);
    String acts = Numbers.text(acting);
    return unit.equals("V") && acting > 0 && !said.equals(acts)
        ? phrase("acting.volts", acts, said)
        : said;
  }

  /** The acting limit in the unit of the stated one: 0.986 A beside 1 A. */
  private static String inUnitOf(double stated, double acting) {
    return Numbers.amps(stated).endsWith(" mA")
        ? Numbers.text(acting * 1000) + " mA"
        : Numbers.text(acting) + " A";
  }

  /** A part of a sentence. */
  String phrase(String key, Object... values) {
    Object[] written = new Object[values.length];
    for (int k = 0; k < values.length; k++) {
      written[k] = values[k] instanceof Double number ? Numbers.text(number) : values[k];
    }
    return MessageFormat.format(WORDS.getString(key), written);
  }

  /** A single phrase. */
  static String word(String key) {
    return WORDS.getString(key);
  }
}
