package firstamp.model.limits;

import firstamp.model.text.Explained;
import firstamp.model.text.Worded;
import firstamp.model.text.Wording.Phrase;
import firstamp.model.text.Wording.Quantity;

/** A number on the job sheet that this probe cannot watch. */
public final class LimitException extends Exception implements Explained {
  private static final String BUNDLE = "firstamp.model.limits.limits";
  private static final long serialVersionUID = 1L;

  private final String field;
  private final double value;
  private final transient Worded allowed;
  private final transient Worded remedy;
  private final transient Worded words;

  /**
   * What is wrong with one number.
   *
   * @param field place in the sheet, for example {@code limits.runningA}
   * @param value as stated
   * @param unit of the value
   * @param allowed what the probe can do, with unit
   * @param remedy key of what to change
   */
  LimitException(String field, double value, String unit, Phrase allowed, String remedy) {
    this(
        field,
        value,
        words("unfit", field, new Quantity(value, unit), allowed, new Phrase(remedy)),
        words(allowed.key(), allowed.values().toArray()),
        words(remedy));
  }

  private LimitException(String field, double value, Worded words, Worded allowed, Worded remedy) {
    super(words.english());
    this.field = field;
    this.value = value;
    this.allowed = allowed;
    this.remedy = remedy;
    this.words = words;
  }

  /** Place in the sheet. */
  public String field() {
    return field;
  }

  /** As stated. */
  public double value() {
    return value;
  }

  /** What the probe can do, in words. */
  public Worded allowed() {
    return allowed;
  }

  /** What to change. */
  public Worded remedy() {
    return remedy;
  }

  @Override
  public Worded words() {
    return words;
  }

  private static Worded words(String key, Object... values) {
    return Worded.of(BUNDLE, key, values);
  }
}
