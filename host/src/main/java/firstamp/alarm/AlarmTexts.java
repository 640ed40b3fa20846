package firstamp.alarm;

import firstamp.model.JobSheet;
import firstamp.model.text.Numbers;
import firstamp.model.text.Wording;
import firstamp.model.text.Wording.Phrase;
import firstamp.model.text.Wording.Quantity;
import java.util.ArrayList;
import java.util.List;

/** What an alarm says: what was seen, the limit, what to do first. */
final class AlarmTexts {
  private final String label;
  private final List<String> afterOff;

  AlarmTexts(JobSheet sheet, String label) {
    this.label = label;
    this.afterOff = OffWords.keys(sheet);
  }

  /**
   * The sentences under a key.
   *
   * @param off whether the switch opened, or opens because of this
   */
  Wording text(String key, boolean off, Object... values) {
    List<Phrase> phrases = new ArrayList<>();
    phrases.add(new Phrase(key + ".seen", values));
    if (label != null && !label.isBlank()) {
      phrases.add(new Phrase("label", label));
    }
    if (AlarmWords.ENGLISH.has(key + ".first")) {
      phrases.add(new Phrase(key + ".first", values));
    }
    if (off) {
      afterOff.forEach(live -> phrases.add(new Phrase(live)));
    }
    return new Wording(phrases);
  }

  /**
   * A limit as it acts, and as the sheet states it where that is another number. A current with its
   * unit; the rest gets its unit from the sentence.
   */
  static Object limit(double stated, double acting, String unit) {
    if (unit.equals("A")) {
      Quantity said = Quantity.amps(stated);
      Quantity acts =
          said.unit().equals("mA") ? new Quantity(acting * 1000, "mA") : new Quantity(acting, "A");
      return acting <= 0 || same(said.value(), acts.value())
          ? said
          : new Phrase("acting", acts, said);
    }
    return unit.equals("V") && acting > 0 && !same(stated, acting)
        ? new Phrase("acting.volts", acting, stated)
        : (Object) stated;
  }

  /** Whether both are written alike. */
  private static boolean same(double one, double other) {
    return Numbers.text(one).equals(Numbers.text(other));
  }
}
