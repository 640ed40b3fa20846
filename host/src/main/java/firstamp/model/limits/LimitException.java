package firstamp.model.limits;

import firstamp.model.text.Numbers;

/** A number on the job sheet that this probe cannot watch. */
public final class LimitException extends Exception {
  private static final long serialVersionUID = 1L;

  private final String field;
  private final double value;
  private final String allowed;

  /**
   * What is wrong with one number.
   *
   * @param field place in the sheet, for example {@code limits.runningA}
   * @param value as stated
   * @param unit of the value
   * @param allowed what the probe can do, in words with unit
   * @param remedy what to change
   */
  public LimitException(String field, double value, String unit, String allowed, String remedy) {
    super(
        field
            + " is "
            + Numbers.text(value)
            + " "
            + unit
            + ", this probe can watch "
            + allowed
            + ". "
            + remedy);
    this.field = field;
    this.value = value;
    this.allowed = allowed;
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
  public String allowed() {
    return allowed;
  }
}
