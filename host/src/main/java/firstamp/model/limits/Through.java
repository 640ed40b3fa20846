package firstamp.model.limits;

import firstamp.model.JobSheet;

/**
 * What the supply comes through: whether its volts stand below nominal on purpose, and what that
 * leaves to be judged. One idea that every rule and sentence about volts asks.
 */
public enum Through {
  /** Straight from the supply. */
  DIRECT,
  /** A lamp in line takes what the set draws too much, and some of what it needs. */
  LAMP,
  /** A transformer or a supply that a person turns up. */
  HAND_TURNED;

  /** Where a supply has to stand for the first look, as a share of nominal. */
  private static final double LOOK_SHARE = 0.3;

  /**
   * A hand-turned supply is looked at from 2 V or a tenth of nominal on: under that two steps of
   * the volts input are more than 20 ohm at what the look lets flow.
   */
  private static final double HAND_LOOK_V = 2;

  private static final double HAND_LOOK_SHARE = 0.1;

  /** Of a sheet, filled or not. */
  public static Through of(JobSheet sheet) {
    String said = sheet.supply().through();
    if ("lamp".equals(said)) {
      return LAMP;
    }
    return "variable-transformer".equals(said) ? HAND_TURNED : DIRECT;
  }

  /** Whether the volts may stand below nominal and nothing is wrong. */
  public boolean belowNominal() {
    return this != DIRECT;
  }

  /** Lowest volts at which the first look says something of the set. */
  public double lookFromV(double nominalV) {
    return this == HAND_TURNED
        ? Math.min(nominalV, Math.max(HAND_LOOK_V, HAND_LOOK_SHARE * nominalV))
        : LOOK_SHARE * nominalV;
  }
}
