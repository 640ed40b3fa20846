package firstamp.analysis.calibrate;

/**
 * One reading of the person's meter, and what the converter read.
 *
 * @param value of the reference, ampere or volt; exactly 0 for clips together
 * @param second what the converter read
 */
public record CalibrationPoint(double value, SettledSecond.Mean second) {
  /** The converter's ends: a conversion there may be anything beyond. */
  static final int HIGHEST_COUNTS = 1023;

  /** Whether part of it is below what the converter can see. */
  public boolean atLowEnd() {
    return second.lowestCounts() == 0;
  }

  /** Whether part of it is above what the converter can see. */
  public boolean atHighEnd() {
    return second.highestCounts() >= HIGHEST_COUNTS;
  }
}
