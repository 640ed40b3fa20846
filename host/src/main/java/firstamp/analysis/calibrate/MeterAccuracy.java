package firstamp.analysis.calibrate;

/**
 * Accuracy of the person's meter according to its data sheet, as limits of error.
 *
 * @param percentOfReading share of what it shows
 * @param smallest the "digits" part, ampere or volt
 */
public record MeterAccuracy(double percentOfReading, double smallest) {
  /** Checks the ranges. */
  public MeterAccuracy {
    if (!(percentOfReading >= 0 && percentOfReading <= 20) || !(smallest >= 0)) {
      throw new IllegalArgumentException(
          "accuracy of the meter "
              + percentOfReading
              + " % + "
              + smallest
              + ", expected 0 to 20 % and 0 or more");
    }
  }

  /**
   * Standard uncertainty of the share: limits of error taken as a rectangular distribution (JCGM
   * 100:2008, 4.3.7).
   */
  public double standardShare() {
    return percentOfReading / 100 / Math.sqrt(3);
  }

  /** Standard uncertainty of the digits part. */
  public double standardSmallest() {
    return smallest / Math.sqrt(3);
  }
}
